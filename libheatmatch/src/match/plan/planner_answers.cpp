#include "planner.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <string>
#include <utility>

namespace heatmatch {

using plan_sentences::say;

Amount Planner::a_day(double kwh) const {
    return {.value = kwh / plan_.days, .unit = unit::kilowatt_hour};
}

Sentence Planner::price_said(double price) const {
    if (!std::isfinite(price)) return say<"plan.price_not_known">();
    return say<"plan.price">(with<"price">(Amount{.value = price, .decimals = 0}),
                             with<"currency">(Name{goals_.currency}));
}

PlanOffer Planner::offer_of(const FoundPlan& found) {
    PlanOffer offer{.kwh = found.kwh, .circuits = search_.circuits(found.circuits)};
    if (std::isfinite(found.verdict.price)) offer.price = found.verdict.price;
    return offer;
}

void Planner::offer_headroom(double level, const PlanOutcome& outcome) {
    if (!outcome.chosen) return;
    PlanOffer offer = offer_of(*outcome.chosen);
    offer.headroom = level;
    const Amount headroom{.value = level, .decimals = 2};
    const double more_pct = 100.0 * (offer.kwh / chosen_.kwh - 1.0);
    constexpr double noticed_pct = 0.5;
    if (more_pct < noticed_pct) {
        offer.said = say<"plan.same_heat">(with<"headroom">(headroom));
    } else {
        offer.said = say<"plan.more_heat">(
            with<"more">(Amount{.value = more_pct, .unit = unit::percent, .digits = 2}),
            with<"headroom">(headroom), with<"price">(price_said(outcome.chosen->verdict.price)));
    }
    plan_.others.push_back(std::move(offer));
}

PlanOutcome Planner::search_briefly(PlanRequirement needed) {
    constexpr std::size_t few_checks = 120;
    needed.most_checks = few_checks;
    constexpr std::size_t few_ties = 30;
    needed.most_ties = few_ties;
    return search(needed);
}

void Planner::add_usual() {
    if (all_.size() < 2) return;
    const auto offer = [&](PlanExtent extent, auto&& said, Sentence none, Sentence none_found) {
        PlanRequirement needed = required(plan_.headroom);
        needed.extent = extent;
        const PlanOutcome outcome = search_briefly(needed);
        PlanOffer made;
        if (outcome.chosen) {
            made = offer_of(*outcome.chosen);
            made.said = said(with<"heat">(a_day(made.kwh)),
                             with<"price">(price_said(outcome.chosen->verdict.price)));
        } else {
            made.said = outcome.proven ? std::move(none) : std::move(none_found);
        }
        made.headroom = plan_.headroom;
        plan_.others.push_back(std::move(made));
    };
    offer(
        PlanExtent::one_group,
        [](auto heat, auto price) { return say<"plan.of_one_group">(heat, price); },
        say<"plan.none_of_one_group">(), say<"plan.none_found_of_one_group">());
    offer(
        PlanExtent::one_array,
        [](auto heat, auto price) { return say<"plan.in_one_array">(heat, price); },
        say<"plan.none_in_one_array">(), say<"plan.none_found_in_one_array">());
}

void Planner::offer_volts() {
    double highest_v = 0.0;
    for (const PlanChoice& choice : chosen_.circuits) {
        highest_v = std::max(highest_v, pool_.at(choice).cold_v);
    }
    const bool wet = task_.yard.site.counts_as_wet();
    // From the lowest on: what it allows is allowed by the others too.
    std::vector<PlanOffer> offers;
    PlanOutcome below;
    for (const double volts : {30.0, 60.0, 80.0}) {
        constexpr double wet_only_v = 30.0;
        if (volts >= highest_v || (volts == wet_only_v && !wet)) continue;
        PlanRequirement needed = required(plan_.headroom);
        needed.volts_max = volts;
        PlanOutcome outcome = search_briefly(needed);
        if (below.best && !(outcome.best && outcome.best->kwh >= below.best->kwh)) {
            outcome.best = below.best;
            outcome.chosen = below.chosen;
        }
        offers.push_back(offer_below(volts, outcome));
        below = std::move(outcome);
    }
    plan_.others.insert(plan_.others.end(), offers.rbegin(), offers.rend());
}

PlanOffer Planner::offer_below(double volts, const PlanOutcome& outcome) {
    const auto limit = with<"volts">(Amount{.value = volts, .unit = unit::volt});
    PlanOffer offer;
    if (outcome.chosen) {
        offer = offer_of(*outcome.chosen);
        const auto heat = with<"heat">(a_day(offer.kwh));
        const auto price = with<"price">(price_said(outcome.chosen->verdict.price));
        offer.said = outcome.proven ? say<"plan.below_volts">(limit, heat, price)
                                    : say<"plan.below_volts_at_least">(limit, heat, price);
    } else if (lowest_cold_v() > volts) {
        offer.said = say<"plan.no_array_below_volts">(limit);
    } else {
        offer.said = outcome.proven ? say<"plan.none_below_volts">(limit)
                                    : say<"plan.none_found_below_volts">(limit);
    }
    offer.headroom = plan_.headroom;
    offer.volts_max = volts;
    return offer;
}

double Planner::lowest_cold_v() const {
    double lowest_v = std::numeric_limits<double>::infinity();
    for (std::size_t g = 0; g < all_.size(); ++g) {
        PanelCounts one(all_.size(), 0);
        one[g] = 1;
        const auto set = pool_.find(one);
        if (!set) continue;
        const ExistingCircuit circuit = task_.circuit(pool_.arrays(*set).front(), 0);
        lowest_v = std::min(lowest_v, task_.judge->unwired(circuit).cold_voltage_v());
    }
    return lowest_v;
}

void Planner::add_idle() {
    PanelCounts used(all_.size(), 0);
    for (const PlanChoice& choice : chosen_.circuits) {
        const PanelCounts& panels = pool_.panels(pool_.set_of(choice));
        for (std::size_t g = 0; g < used.size(); ++g) used[g] += panels[g];
    }
    for (std::size_t g = 0; g < used.size(); ++g) {
        if (used[g] == all_[g]) continue;
        PanelCounts panels(all_.size(), 0);
        panels[g] = all_[g] - used[g];
        plan_.idle.push_back({.group = task_.yard.panels[g].group,
                              .count = all_[g] - used[g],
                              .why = why_idle(search_, chosen_, panels, plan_.headroom,
                                              requirement_of(goals_, 0.0).circuits_max)});
    }
}

void Planner::add_remarks() {
    const auto arrays =
        with<"arrays">(Amount{.value = static_cast<double>(plan_.arrays), .digits = 12});
    const auto gap =
        with<"gap">(Amount{.value = 100.0 * plan_.gap(), .unit = unit::percent, .digits = 2});
    constexpr double rounding = 1e-4;
    if (!proven_) {
        plan_.remarks.push_back(say<"plan.not_proven">(arrays, gap));
    } else if (plan_.gap() > rounding) {
        plan_.remarks.push_back(say<"plan.proven_tie">(arrays, gap));
    } else {
        plan_.remarks.push_back(say<"plan.proven">(arrays));
    }
    if (task_.family.extent == FamilyExtent::equal_panels) {
        plan_.remarks.push_back(say<"plan.equal_panels">());
    } else if (task_.family.extent == FamilyExtent::equal_strings) {
        plan_.remarks.push_back(say<"plan.equal_strings">());
    }
    if (task_.most_in_unlike < most_planned_in_tree && !task_.unlike.empty()) {
        plan_.remarks.push_back(
            say<"plan.few_unlike">(with<"count">(static_cast<double>(task_.most_in_unlike))));
    }
    if (!task_.pattern_of.empty()) {
        plan_.remarks.push_back(say<"plan.pattern">(with<"circuit">(task_.pattern_of)));
    }
}

}  // namespace heatmatch
