#include "heatmatch/match/plan/plan.hpp"

#include "plan_answers.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <array>
#include <limits>
#include <utility>

namespace heatmatch {

namespace {

using plan_sentences::say;

constexpr auto levels = std::to_array<double>({0.30, 0.20, 0.10, 0.0});
/// Share of the heat at no headroom with which more headroom is preferred.
constexpr double enough_heat = 0.95;

/// Makes a plan from searches under several requirements.
class Planner {
  public:
    Planner(PlanTask& task, const Parts& catalog, const RankOptions& options)
        : task_(task),
          catalog_(catalog),
          options_(options),
          lists_(task),
          search_(lists_),
          goals_(task.yard.goals) {
        plan_.days = task.energies->days();
        plan_.arrays = task.family.arrays.size();
        for (const OwnedPanels& owned : task.yard.panels) all_.push_back(owned.count);
        plan_.bounds.panels_kwh = task.energies->largest_kwh(all_);
        plan_.remarks = task.energies->remarks();
    }

    Plan make() {
        const double base = goals_.headroom_min.value_or(0.0);
        PlanOutcome found = at(base);
        if (!found.best) {
            tell_nearest(base, found);
            return std::move(plan_);
        }
        const double most_kwh = found.best->kwh;
        plan_.headroom = base;
        std::vector<std::pair<double, PlanOutcome>> lower{{base, found}};
        for (const double level : levels) {
            if (level <= base) break;
            PlanOutcome more = at(level, enough_heat * most_kwh);
            if (!more.best || more.best->kwh < enough_heat * most_kwh) continue;
            plan_.headroom = level;
            found = std::move(more);
            break;
        }
        for (const double level : levels) {
            if (level < plan_.headroom && level > base) lower.emplace_back(level, at(level));
        }
        take(found);
        for (const auto& [level, outcome] : lower) {
            if (level < plan_.headroom) offer_headroom(level, outcome);
        }
        offer_volts();
        add_bounds(found);
        add_single();
        add_idle();
        add_remarks();
        return std::move(plan_);
    }

  private:
    /// One search; each has a part of the progress that is left, because their number is not known.
    PlanOutcome search(const PlanRequirement& needed) {
        constexpr double part = 0.3;
        Progress progress;
        if (options_.progress) {
            progress = [this](double share) {
                return options_.progress(reached_ + part * (1.0 - reached_) * share);
            };
        }
        PlanOutcome outcome = search_.best(needed, progress);
        reached_ += part * (1.0 - reached_);
        return outcome;
    }

    PlanOutcome at(double headroom, double least_kwh = 0.0) {
        PlanRequirement needed = requirement_of(goals_, headroom);
        needed.least_kwh = least_kwh;
        return search(needed);
    }

    /// The circuits of the search, as an assessment describes them.
    void take(const PlanOutcome& found) {
        chosen_ = *found.chosen;
        const auto circuits = search_.circuits(chosen_.circuits);
        plan_.installation = task_.judge->with(circuits);
        plan_.circuits = planned_candidates(task_, catalog_, circuits);
        std::vector<Circuit> wired;
        for (const Candidate& candidate : plan_.circuits) {
            wired.push_back(candidate.circuit);
            plan_.kwh += candidate.objective();
        }
        plan_.bill = task_.judge->bill(wired);
        plan_.at_most_kwh = std::max(found.at_most_kwh, plan_.kwh);
        proven_ = found.proven;
    }

    [[nodiscard]] Amount a_day(double kwh) const {
        return {.value = kwh / plan_.days, .unit = unit::kilowatt_hour};
    }

    [[nodiscard]] Sentence price_said(double price) const {
        if (!std::isfinite(price)) return say<"plan.price_not_known">();
        return say<"plan.price">(with<"price">(Amount{.value = price, .decimals = 0}),
                                 with<"currency">(Name{goals_.currency}));
    }

    [[nodiscard]] PlanOffer offer_of(const FoundPlan& found) {
        PlanOffer offer{.kwh = found.kwh, .circuits = search_.circuits(found.circuits)};
        if (std::isfinite(found.verdict.price)) offer.price = found.verdict.price;
        return offer;
    }

    void offer_headroom(double level, const PlanOutcome& outcome) {
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
                with<"headroom">(headroom),
                with<"price">(price_said(outcome.chosen->verdict.price)));
        }
        plan_.others.push_back(std::move(offer));
    }

    /// Plans below the voltages from which more duties apply.
    void offer_volts() {
        double highest_v = 0.0;
        for (const PlanChoice& choice : chosen_.circuits) {
            highest_v = std::max(highest_v, lists_.at(choice.set, choice.place).cold_v);
        }
        const bool wet = task_.yard.site.counts_as_wet();
        for (const double volts : {80.0, 60.0, 30.0}) {
            constexpr double wet_only_v = 30.0;
            if (volts >= highest_v || (volts == wet_only_v && !wet)) continue;
            PlanRequirement needed = requirement_of(goals_, plan_.headroom);
            needed.volts_max = volts;
            constexpr std::size_t few_checks = 600;
            needed.most_checks = few_checks;
            const PlanOutcome outcome = search(needed);
            PlanOffer offer{.said = say<"plan.none_below_volts">(
                                with<"volts">(Amount{.value = volts, .unit = unit::volt}))};
            if (outcome.chosen) {
                offer = offer_of(*outcome.chosen);
                offer.said = say<"plan.below_volts">(
                    with<"volts">(Amount{.value = volts, .unit = unit::volt}),
                    with<"heat">(a_day(offer.kwh)),
                    with<"price">(price_said(outcome.chosen->verdict.price)));
            }
            offer.headroom = plan_.headroom;
            offer.volts_max = volts;
            plan_.others.push_back(std::move(offer));
        }
    }

    /// At least its own heat, which is summed anew: to 1e-3 of the curves of the search.
    void add_bounds(const PlanOutcome& found) {
        const auto at_most = [this](bool budget, bool together) {
            PlanRequirement looser = requirement_of(goals_, plan_.headroom);
            looser.budget = budget;
            looser.together = together;
            looser.most_checks = 300;
            return std::max(search(looser).at_most_kwh, plan_.kwh);
        };
        plan_.bounds.store_kwh =
            goals_.budget ? at_most(false, true) : std::max(found.at_most_kwh, plan_.kwh);
        plan_.bounds.bill_kwh = at_most(true, false);
    }

    void add_single() {
        if (plan_.circuits.size() == 1) {
            plan_.single = plan_.circuits.front();
            return;
        }
        PlanRequirement one = requirement_of(goals_, plan_.headroom);
        one.circuits_max = 1;
        const PlanOutcome outcome = search(one);
        if (!outcome.chosen) return;
        plan_.single =
            planned_candidates(task_, catalog_, search_.circuits(outcome.chosen->circuits)).front();
    }

    void add_idle() {
        PanelCounts used(all_.size(), 0);
        for (const PlanChoice& choice : chosen_.circuits) {
            const PanelCounts& panels = lists_.panels(choice.set);
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

    /// No plan: the reason, and what is possible without one of the goals.
    void tell_nearest(double base, const PlanOutcome& found) {
        plan_.at_most_kwh = found.at_most_kwh;
        std::map<std::string, std::size_t> reasons = lists_.reasons();
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
                with<"headroom">(
                    Amount{.value = outcome.chosen->verdict.headroom, .decimals = 2})));
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

    void add_remarks() {
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
        if (!task_.pattern_of.empty()) {
            plan_.remarks.push_back(say<"plan.pattern">(with<"circuit">(task_.pattern_of)));
        }
    }

    PlanTask& task_;
    const Parts& catalog_;
    const RankOptions& options_;
    CircuitLists lists_;
    PlanSearch search_;
    Goals goals_;
    PanelCounts all_{};
    FoundPlan chosen_{};
    bool proven_ = true;
    double reached_ = 0.0;  //!< share of the progress
    Plan plan_{};
};

}  // namespace

double Plan::gap() const {
    return kwh > 0.0 ? std::max(0.0, at_most_kwh / kwh - 1.0) : 0.0;
}

Plan plan(const Parts& catalog, const Installation& installation, const RankOptions& options) {
    const auto task = PlanTask::make(catalog, installation, options);
    return Planner(*task, catalog, options).make();
}

}  // namespace heatmatch
