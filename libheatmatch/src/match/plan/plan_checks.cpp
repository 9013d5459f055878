#include "plan_run.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "heatmatch/base/parallel.hpp"

namespace heatmatch {

bool PlanSearch::Run::exceeds_budget(const std::vector<const PartNeeds*>& needs) {
    return pool_.least_bill().at_least(needs) > rounding * *budget_;
}

std::size_t PlanSearch::Run::first_beyond(const Node& node) {
    std::vector<PlanChoice> choices;
    std::vector<const PartNeeds*> needs;
    if (counts_money_) {
        for (std::size_t i = 0; i < node.count; ++i) needs.push_back(of_sets_[node.sets[i]]);
    }
    for (std::size_t i = 0; i < node.count; ++i) {
        const PlanChoice& choice = view_.circuit(node.sets[i], node.places[i]).choice;
        choices.push_back(choice);
        if (!search_.has_elements(choices)) return i;
        if (!counts_money_) continue;
        needs[i] = &pool_.least_bill().of_circuit(choice.array, choice.bank).needs;
        if (!exceeds_budget(needs)) continue;
        ++outcome_->reasons["budget"];
        return i;
    }
    return none_fails;
}

std::size_t PlanSearch::Run::try_together(const Node& node) {
    std::vector<PlanChoice> choices;
    double kwh = 0.0;
    for (std::size_t i = 0; i < node.count; ++i) {
        const ListedCircuit& listed = view_.circuit(node.sets[i], node.places[i]);
        if (listed.judged && !view_.passes(listed.verdict)) return i;
        choices.push_back(listed.choice);
        kwh += listed.kwh;
    }
    if (kwh < near() || !worth_its_bill(choices, kwh)) return none_fails;
    for (std::size_t i = 0; i < node.count; ++i) {
        if (!passes_alone(choices[i])) return i;
    }
    if (choices.size() > 1) search_.sort(choices);
    FoundPlan found{.circuits = choices, .kwh = kwh};
    if (node.count == 1) {
        found.verdict = pool_.at(choices.front()).verdict;
    } else if (!judge_together(choices, found.verdict)) {
        return none_fails;
    }
    keep(std::move(found));
    return none_fails;
}

bool PlanSearch::Run::passes_alone(const PlanChoice& choice) {
    ListedCircuit* const listed = &pool_.at(choice);
    if (!listed->judged) judge_with_next(*listed);
    return view_.passes(listed->verdict);
}

void PlanSearch::Run::judge_with_next(ListedCircuit& first) {
    std::vector<ListedCircuit*> circuits{&first};
    constexpr std::size_t near_front = 64;
    const std::size_t front = std::min(queue_.size(), near_front);
    const std::size_t most = worker_count(pool_.task().options.threads, front + 1);
    for (std::size_t n = 0; n < front && circuits.size() < most; ++n) {
        const Node& node = queue_[n];
        for (std::size_t i = 0; i < node.count && circuits.size() < most; ++i) {
            if (!view_.is_known(node.sets[i], node.places[i])) continue;
            ListedCircuit& other = view_.circuit(node.sets[i], node.places[i]);
            const bool known =
                std::find(circuits.begin(), circuits.end(), &other) != circuits.end();
            if (!other.judged && !known) circuits.push_back(&other);
        }
    }
    pool_.judge(circuits);
}

void PlanSearch::Run::keep(FoundPlan found) {
    const bool was_chosen = outcome_->chosen.has_value();
    outcome_->keep(std::move(found));
    if (!was_chosen || outcome_->chosen->kwh >= tie_of_plans * outcome_->best->kwh) return;
    outcome_->choose();
    choice_open_ = true;
}

bool PlanSearch::Run::worth_its_bill(std::span<const PlanChoice> choices, double kwh) {
    if (!outcome_->best || kwh > outcome_->best->kwh) return true;
    // Among ties only a smaller bill is of interest, or as small a one of fewer circuits.
    std::vector<const PartNeeds*> needs;
    for (const PlanChoice& choice : choices) {
        needs.push_back(&pool_.least_bill().of_circuit(choice.array, choice.bank).needs);
    }
    return std::pair(pool_.least_bill().at_least(needs), choices.size()) <
           std::pair(outcome_->chosen->verdict.price, outcome_->chosen->circuits.size());
}

bool PlanSearch::Run::within_budget(const PlanVerdict& verdict) const {
    return !budget_ || verdict.price <= *budget_;
}

bool PlanSearch::Run::judge_together(std::span<const PlanChoice> choices, PlanVerdict& verdict) {
    if (!requirement_.together) {
        verdict = pool_.task().judge->price(search_.circuits(choices));
        return within_budget(verdict) || fail("budget");
    }
    if (search_.known_to_fail(choices, requirement_.headroom)) return fail("heat together");
    verdict = search_.together(choices);
    if (verdict.danger || !verdict.assessed) return fail(verdict.reason);
    if (requirement_.careful && verdict.worst_danger) return fail("unstated facts");
    if (verdict.headroom < requirement_.headroom) return fail(verdict.reason);
    if (!within_budget(verdict)) return fail("budget");
    const auto& parts_max = requirement_.parts_max;
    if (parts_max && verdict.parts > *parts_max) return fail("parts_max");
    return true;
}

bool PlanSearch::Run::fail(const std::string& reason) {
    ++outcome_->reasons[reason];
    return false;
}

void PlanSearch::Run::grow() {
    std::vector<Node> firsts;
    constexpr int most_steps = 300;
    for (std::uint32_t set = 0; set < pool_.sets(); ++set) {
        std::uint32_t place = 0;
        bool found = false;
        for (int step = 0; step < most_steps && !found; ++step) {
            if (view_.is_known(set, place)) {
                found = passes_alone(view_.circuit(set, place).choice);
                if (!found) ++place;
            } else if (std::isfinite(view_.at_most(set, place))) {
                view_.advance(set);
            } else {
                break;
            }
        }
        if (!found) continue;
        Node node{.value = view_.circuit(set, place).kwh, .count = 1};
        node.sets[0] = set;
        node.places[0] = place;
        firsts.push_back(node);
    }
    std::sort(firsts.begin(), firsts.end(),
              [](const Node& a, const Node& b) { return less(b, a); });
    PanelCounts left;
    for (const OwnedPanels& owned : pool_.task().yard.panels) left.push_back(owned.count);
    FoundPlan best;
    for (const Node& node : firsts) {
        if (static_cast<int>(best.circuits.size()) == requirement_.circuits_max) break;
        const PanelCounts& panels = pool_.panels(node.sets[0]);
        if (!fits_in(panels, left)) continue;
        FoundPlan found{.circuits = best.circuits, .kwh = best.kwh + node.value};
        found.circuits.push_back(view_.circuit(node.sets[0], node.places[0]).choice);
        search_.sort(found.circuits);
        if (!search_.has_elements(found.circuits)) continue;
        if (found.circuits.size() == 1) {
            found.verdict = pool_.at(found.circuits.front()).verdict;
        } else if (!judge_together(found.circuits, found.verdict)) {
            continue;
        }
        best = std::move(found);
        for (std::size_t g = 0; g < left.size(); ++g) left[g] -= panels[g];
    }
    if (!best.circuits.empty()) outcome_->keep(std::move(best));
}

}  // namespace heatmatch
