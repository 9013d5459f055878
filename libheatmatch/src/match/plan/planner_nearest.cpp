#include "match/rank/fact_path.hpp"
#include "planner.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <array>
#include <limits>
#include <string>
#include <utility>
#include <vector>

#include "heatmatch/match/margins/shown_margin.hpp"

namespace heatmatch {

using plan_sentences::say;

namespace {

/// Parts of a budget that are tried in turn: the nearest with which a plan exists.
constexpr auto larger_budgets = std::to_array<double>({1.25, 1.5, 2.0, 3.0, 5.0, 10.0});
constexpr auto lower_levels = std::to_array<double>({0.40, 0.30, 0.20, 0.10, 0.0});

}  // namespace

bool Planner::offer_without(const Sentence& goal, const PlanRequirement& needed) {
    const PlanOutcome outcome = search(needed);
    if (!outcome.chosen) return false;
    plan_.remarks.push_back(say<"plan.nearest">(
        with<"goal">(goal), with<"heat">(a_day(outcome.chosen->kwh)),
        with<"price">(price_said(outcome.chosen->verdict.price)),
        with<"headroom">(Amount{.value = outcome.chosen->verdict.headroom, .decimals = 2})));
    return true;
}

bool Planner::offer_single_goals(double base) {
    bool any = false;
    const PlanRequirement all = requirement_of(goals_, base);
    if (all.budget) {
        PlanRequirement needed = all;
        for (const double factor : larger_budgets) {
            needed.budget = factor * *all.budget;
            const Amount budget{.value = *needed.budget, .digits = 3};
            if (offer_without(say<"plan.goal_larger_budget">(
                                  with<"budget">(budget), with<"currency">(Name{goals_.currency})),
                              needed)) {
                any = true;
                break;
            }
        }
        needed.budget.reset();
        if (!any) any = offer_without(say<"plan.goal_budget">(), needed);
    }
    if (goals_.volts_max) {
        PlanRequirement needed = all;
        needed.volts_max = std::numeric_limits<double>::infinity();
        any = offer_without(say<"plan.goal_volts">(), needed) || any;
    }
    if (base > 0.0) {
        for (const double level : lower_levels) {
            if (level >= base) continue;
            const Amount headroom{.value = level, .decimals = 2};
            if (offer_without(say<"plan.goal_headroom">(with<"headroom">(headroom)),
                              requirement_of(goals_, level))) {
                any = true;
                break;
            }
        }
    }
    if (goals_.parts_max) {
        PlanRequirement needed = all;
        needed.parts_max.reset();
        any = offer_without(say<"plan.goal_parts">(), needed) || any;
    }
    return any;
}

void Planner::tell_nearest(double base, const PlanOutcome& found) {
    plan_.at_most_kwh = found.at_most_kwh;
    plan_.installation = task_.yard;
    plan_.bill.currency = goals_.currency;
    Sentences& remarks = plan_.remarks;
    const std::size_t first = remarks.size();
    const bool has_goals = goals_.budget || goals_.volts_max || base > 0.0 || goals_.parts_max;
    bool any = has_goals && offer_single_goals(base);
    if (has_goals && !any) {
        PlanRequirement free = requirement_of(goals_, 0.0);
        free.budget.reset();
        free.volts_max = std::numeric_limits<double>::infinity();
        free.parts_max.reset();
        any = offer_without(say<"plan.goal_all">(), free);
    }
    Sentence why = found.proven ? say<"plan.none">() : say<"plan.none_found">();
    const auto& reasons = pool_.reasons();
    const auto most =
        std::max_element(reasons.begin(), reasons.end(),
                         [](const auto& a, const auto& b) { return a.second < b.second; });
    if (!any && found.proven && most != reasons.end()) {
        why = say<"plan.none_because">(with<"margin">(Name{shown_margin_name(most->first)}));
    }
    remarks.insert(remarks.begin() + static_cast<std::ptrdiff_t>(first), std::move(why));
    for (Sentence& fact : missing_facts()) remarks.push_back(std::move(fact));
}

Sentences Planner::missing_facts() const {
    std::vector<const std::pair<const std::pair<std::string, std::string>, LackedFact>*> facts;
    facts.reserve(pool_.lacking().size());
    for (const auto& lacked : pool_.lacking()) facts.push_back(&lacked);
    std::stable_sort(facts.begin(), facts.end(), [](const auto* a, const auto* b) {
        return a->second.circuits > b->second.circuits;
    });
    constexpr std::size_t most_facts = 5;
    if (facts.size() > most_facts) facts.resize(most_facts);
    Sentences said;
    for (const auto* lacked : facts) {
        const auto& [field, subject] = lacked->first;
        const PlanChoice& example = lacked->second.example;
        const ExistingCircuit circuit = task_.circuit(example.array, example.bank);
        const Candidate candidate{.circuit = task_.judge->wired(circuit),
                                  .site = task_.judge->site_of(circuit)};
        Margin margin;
        margin.subject = subject;
        Sentence sentence =
            say<"plan.lacks">(with<"fact">(fact_path(task_.yard, candidate, margin, field)));
        const auto same = [&](const Sentence& other) { return other.text() == sentence.text(); };
        if (std::none_of(said.begin(), said.end(), same)) said.push_back(std::move(sentence));
    }
    return said;
}

}  // namespace heatmatch
