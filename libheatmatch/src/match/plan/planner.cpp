#include "planner.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace heatmatch {

namespace {

constexpr auto levels = std::to_array<double>({0.30, 0.20, 0.10, 0.0});
/// Share of the heat at no headroom with which more headroom is preferred.
constexpr double enough_heat = 0.95;

}  // namespace

Planner::Planner(PlanTask& task, const Parts& catalog, const RankOptions& options)
    : task_(task),
      catalog_(catalog),
      options_(options),
      pool_(task),
      search_(pool_),
      goals_(task.yard.goals) {
    plan_.days = task.energies->days();
    plan_.arrays = task.family.arrays.size();
    for (const OwnedPanels& owned : task.yard.panels) all_.push_back(owned.count);
    plan_.bounds.panels_kwh = task.energies->largest_kwh(all_);
    plan_.remarks = task.energies->remarks();
}

Plan Planner::make() {
    const double base = goals_.headroom_min.value_or(0.0);
    PlanOutcome found = at(base);
    if (!found.best) {
        tell_nearest(base, found);
        return std::move(plan_);
    }
    prefer_careful(base, found);
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
    sum_again(found);
    take(found);
    for (const auto& [level, outcome] : lower) {
        if (level < plan_.headroom) offer_headroom(level, outcome);
    }
    offer_volts();
    add_bounds(found);
    add_single();
    add_usual();
    add_idle();
    add_remarks();
    return std::move(plan_);
}

PlanOutcome Planner::search(const PlanRequirement& needed) {
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

void Planner::prefer_careful(double headroom, PlanOutcome& found) {
    careful_ = true;
    if (!found.best->verdict.worst_danger) return;
    PlanRequirement needed = required(headroom);
    constexpr std::size_t few_checks = 150;
    needed.most_checks = few_checks;
    needed.grow = false;
    PlanOutcome careful = search(needed);
    careful_ = careful.best.has_value();
    if (careful_) found = std::move(careful);
}

PlanRequirement Planner::required(double headroom) const {
    PlanRequirement needed = requirement_of(goals_, headroom);
    needed.careful = careful_;
    return needed;
}

PlanOutcome Planner::at(double headroom, double least_kwh) {
    PlanRequirement needed = required(headroom);
    needed.least_kwh = least_kwh;
    return search(needed);
}

void Planner::sum_again(PlanOutcome& found) {
    std::vector<FoundPlan> plans = found.first;
    const auto is_chosen = [&](const FoundPlan& plan) {
        return plan.circuits == found.chosen->circuits;
    };
    if (std::none_of(plans.begin(), plans.end(), is_chosen)) plans.push_back(*found.chosen);
    if (plans.size() < 2) return;
    for (FoundPlan& plan : plans) {
        plan.kwh = 0.0;
        for (const Candidate& candidate :
             planned_candidates(task_, catalog_, search_.circuits(plan.circuits))) {
            plan.kwh += candidate.objective();
        }
    }
    PlanOutcome exact;
    for (FoundPlan& plan : plans) exact.keep(std::move(plan));
    exact.choose();
    found.best = exact.best;
    found.chosen = exact.chosen;
}

void Planner::take(const PlanOutcome& found) {
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

void Planner::add_bounds(const PlanOutcome& found) {
    const auto at_most = [this](bool budget, bool together) {
        PlanRequirement looser = required(plan_.headroom);
        if (!budget) looser.budget.reset();
        looser.together = together;
        constexpr std::size_t few_checks = 60;
        looser.most_checks = few_checks;
        looser.most_ties = 0;
        looser.grow = false;
        return std::max(search(looser).at_most_kwh, plan_.kwh);
    };
    plan_.bounds.store_kwh =
        goals_.budget ? at_most(false, true) : std::max(found.at_most_kwh, plan_.kwh);
    plan_.bounds.bill_kwh = at_most(true, false);
}

void Planner::add_single() {
    if (plan_.circuits.size() == 1) {
        plan_.single = plan_.circuits.front();
        return;
    }
    PlanRequirement one = required(plan_.headroom);
    one.circuits_max = 1;
    one.most_ties = 0;
    const PlanOutcome outcome = search(one);
    if (!outcome.chosen) return;
    plan_.single =
        planned_candidates(task_, catalog_, search_.circuits(outcome.chosen->circuits)).front();
}

}  // namespace heatmatch
