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

void Planner::offer_volts() {
    double highest_v = 0.0;
    for (const PlanChoice& choice : chosen_.circuits) {
        highest_v = std::max(highest_v, pool_.at(choice).cold_v);
    }
    const bool wet = task_.yard.site.counts_as_wet();
    for (const double volts : {80.0, 60.0, 30.0}) {
        constexpr double wet_only_v = 30.0;
        if (volts >= highest_v || (volts == wet_only_v && !wet)) continue;
        PlanRequirement needed = required(plan_.headroom);
        needed.volts_max = volts;
        constexpr std::size_t few_checks = 300;
        needed.most_checks = few_checks;
        constexpr std::size_t few_ties = 30;
        needed.most_ties = few_ties;
        const PlanOutcome outcome = search(needed);
        PlanOffer offer{.said = say<"plan.none_below_volts">(
                            with<"volts">(Amount{.value = volts, .unit = unit::volt}))};
        if (outcome.chosen) {
            offer = offer_of(*outcome.chosen);
            offer.said =
                say<"plan.below_volts">(with<"volts">(Amount{.value = volts, .unit = unit::volt}),
                                        with<"heat">(a_day(offer.kwh)),
                                        with<"price">(price_said(outcome.chosen->verdict.price)));
        }
        offer.headroom = plan_.headroom;
        offer.volts_max = volts;
        plan_.others.push_back(std::move(offer));
    }
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

void Planner::tell_nearest(double base, const PlanOutcome& found) {
    plan_.at_most_kwh = found.at_most_kwh;
    std::map<std::string, std::size_t> reasons = pool_.reasons();
    const auto most =
        std::max_element(reasons.begin(), reasons.end(),
                         [](const auto& a, const auto& b) { return a.second < b.second; });
    plan_.remarks.push_back(most == reasons.end()
                                ? say<"plan.none">()
                                : say<"plan.none_because">(with<"margin">(most->first)));
    const auto without = [&](const Sentence& goal, const PlanRequirement& needed) {
        const PlanOutcome outcome = search(needed);
        if (!outcome.chosen) return;
        plan_.remarks.push_back(say<"plan.nearest">(
            with<"goal">(goal), with<"heat">(a_day(outcome.chosen->kwh)),
            with<"price">(price_said(outcome.chosen->verdict.price)),
            with<"headroom">(Amount{.value = outcome.chosen->verdict.headroom, .decimals = 2})));
    };
    PlanRequirement needed = requirement_of(goals_, base);
    if (goals_.budget) {
        needed.budget = false;
        without(say<"plan.goal_budget">(), needed);
    }
    needed = requirement_of(goals_, base);
    if (goals_.volts_max) {
        needed.volts_max = std::numeric_limits<double>::infinity();
        without(say<"plan.goal_volts">(), needed);
    }
    if (goals_.headroom_min) without(say<"plan.goal_headroom">(), requirement_of(goals_, 0.0));
    needed = requirement_of(goals_, base);
    if (goals_.parts_max) {
        needed.parts_max.reset();
        without(say<"plan.goal_parts">(), needed);
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
