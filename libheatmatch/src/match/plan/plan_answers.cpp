#include "plan_answers.hpp"

#include "sentences.hpp"

#include "heatmatch/match/candidate/assess.hpp"

namespace heatmatch {

using plan_sentences::say;

PlanRequirement requirement_of(const Goals& goals, double headroom) {
    PlanRequirement needed{
        .headroom = headroom, .parts_max = goals.parts_max, .budget = goals.budget};
    if (goals.volts_max) needed.volts_max = *goals.volts_max;
    needed.circuits_max = goals.circuits_max.value_or(needed.circuits_max);
    return needed;
}

std::vector<Candidate> planned_candidates(const PlanTask& task, const Parts& catalog,
                                          const std::vector<ExistingCircuit>& circuits) {
    RankOptions options = task.options;
    options.weather = task.weather;
    options.progress = {};
    const Installation planned = task.judge->with(circuits);
    std::vector<Candidate> candidates = assess_circuits(catalog, planned, options);
    std::vector<Circuit> wired;
    for (std::size_t i = 0; i < candidates.size(); ++i) {
        // They do not exist yet: only what is owned is there.
        candidates[i].circuit.bank.owned = task.judge->unwired(planned.circuits[i]).bank.owned;
        wired.push_back(candidates[i].circuit);
    }
    const std::vector<Bill> bills = bills_in_turn(wired, task.yard, *task.parts);
    for (std::size_t i = 0; i < candidates.size(); ++i) {
        candidates[i].bill = bills[i];
        candidates[i].price_to_buy = bills[i].typical();
        candidates[i].currency = bills[i].currency;
    }
    return candidates;
}

Sentence why_idle(PlanSearch& search, const FoundPlan& plan, const PanelCounts& panels,
                  double headroom, int circuits_max) {
    CircuitPool& pool = search.pool();
    const auto set = pool.find(panels);
    if (!set) return say<"plan.idle_bound">();
    CircuitLists lists(pool, 0.0, false);
    constexpr int most_looks = 40;
    for (int look = 0; look < most_looks && lists.found(*set) == 0; ++look) lists.step(*set);
    if (lists.found(*set) == 0) return say<"plan.idle_bound">();
    ListedCircuit& best = lists.at(*set, 0);
    ListedCircuit* const one = &best;
    pool.judge({&one, 1});
    const PlanVerdict& alone = best.verdict;
    if (!alone.assessed) return say<"plan.idle_not_assessed">(with<"margin">(alone.reason));
    if (alone.danger) return say<"plan.idle_danger">(with<"margin">(alone.reason));
    if (!alone.affordable) return say<"plan.idle_budget">();
    if (static_cast<int>(plan.circuits.size()) >= circuits_max) {
        return say<"plan.idle_circuits">(with<"count">(static_cast<double>(circuits_max)));
    }
    std::vector<PlanChoice> more = plan.circuits;
    more.push_back(best.choice);
    search.sort(more);
    const PlanVerdict& together = search.together(more);
    if (together.reason == "fit in store") return say<"plan.idle_misfit">();
    if (together.danger || together.headroom < headroom) {
        return say<"plan.idle_together">(with<"margin">(together.reason));
    }
    return together.affordable ? say<"plan.idle_bound">() : say<"plan.idle_budget">();
}

}  // namespace heatmatch
