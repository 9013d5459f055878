#include "plan_search.hpp"

#include <algorithm>
#include <tuple>
#include <utility>

#include "heatmatch/match/circuit/unlike_bank.hpp"

namespace heatmatch {

namespace {

/// Combinations of sets of panels that are looked at, at most.
constexpr std::size_t most_nodes = 400000;

/// Whether what failed with those powers fails with these too.
bool at_least(const std::vector<double>& element_w, const std::vector<double>& failed_w) {
    return std::equal(element_w.begin(), element_w.end(), failed_w.begin(), failed_w.end(),
                      [](double power, double failed) { return power >= failed; });
}

/// A smaller bill, then fewer circuits, then fewer parts.
bool is_smaller(const FoundPlan& a, const FoundPlan& b) {
    const auto order = [](const FoundPlan& plan) {
        return std::tuple(plan.verdict.price, plan.circuits.size(), plan.verdict.parts);
    };
    return order(a) < order(b);
}

}  // namespace

void PlanOutcome::keep(FoundPlan found) {
    if (!best || found.kwh > best->kwh) best = found;
    const auto place =
        std::upper_bound(first.begin(), first.end(), found,
                         [](const FoundPlan& a, const FoundPlan& b) { return a.kwh > b.kwh; });
    first.insert(place, found);
    constexpr std::size_t most_first = 5;
    if (first.size() > most_first) first.pop_back();
    if (!chosen || is_smaller(found, *chosen)) chosen = found;
    kept.push_back(std::move(found));
}

void PlanOutcome::choose() {
    chosen = best;
    for (const FoundPlan& found : kept) {
        if (found.kwh >= tie_of_plans * best->kwh && is_smaller(found, *chosen)) chosen = found;
    }
}

PlanSearch::PlanSearch(CircuitPool& pool)
    : pool_(pool), lists_(pool, 0.0, true), equal_lists_(pool, 0.0, false) {
    make_nodes();
}

void PlanSearch::add_nodes(Node& node, std::size_t first, const PanelCounts& left, int most) {
    for (std::size_t set = first; set < pool_.sets(); ++set) {
        const PanelCounts& panels = pool_.panels(set);
        if (!fits_in(panels, left)) continue;
        if (nodes_.size() >= most_nodes) {
            all_nodes_ = false;
            return;
        }
        node.sets[node.count++] = static_cast<std::uint32_t>(set);
        nodes_.push_back(node);
        if (node.count < most) {
            PanelCounts rest = left;
            for (std::size_t g = 0; g < rest.size(); ++g) rest[g] -= panels[g];
            add_nodes(node, set, rest, most);
        }
        --node.count;
    }
}

void PlanSearch::make_nodes() {
    PanelCounts all;
    for (const OwnedPanels& owned : pool_.task().yard.panels) all.push_back(owned.count);
    const int most =
        std::clamp(pool_.task().yard.goals.circuits_max.value_or(3), 1, most_planned_circuits);
    // Few circuits first: where not all combinations fit, those of more are left out.
    for (int count = 1; count <= most && all_nodes_; ++count) {
        nodes_.clear();
        Node node;
        add_nodes(node, 0, all, count);
    }
}

std::vector<ExistingCircuit> PlanSearch::circuits(std::span<const PlanChoice> choices) const {
    std::vector<ExistingCircuit> made;
    for (const PlanChoice& choice : choices) {
        made.push_back(pool_.task().circuit(choice.array, choice.bank));
    }
    return made;
}

void PlanSearch::sort(std::vector<PlanChoice>& choices) const {
    std::sort(choices.begin(), choices.end(), [this](const PlanChoice& a, const PlanChoice& b) {
        const auto first = circuits({&a, 1});
        const auto second = circuits({&b, 1});
        if (lies_before(first.front(), second.front())) return true;
        if (lies_before(second.front(), first.front())) return false;
        return a < b;
    });
}

PlanSearch::Banks PlanSearch::banks_of(std::span<const PlanChoice> choices) const {
    Banks banks;
    for (const PlanChoice& choice : choices) {
        const Bank& bank = pool_.task().bank(choice.bank);
        if (!bank.unlike) {
            banks.emplace_back(bank.element.id, bank.hookup.count());
            continue;
        }
        for (const Bank& one : bank.unlike->elements) banks.emplace_back(one.element.id, 1);
    }
    return banks;
}

bool PlanSearch::is_unlike(std::span<const PlanChoice> choices) const {
    return std::any_of(choices.begin(), choices.end(), [this](const PlanChoice& choice) {
        return pool_.task().bank(choice.bank).unlike != nullptr;
    });
}

bool PlanSearch::has_elements(std::span<const PlanChoice> choices) const {
    std::map<std::string, int> used;
    for (const auto& [element, count] : banks_of(choices)) used[element] += count;
    return std::all_of(used.begin(), used.end(), [this](const auto& entry) {
        const auto most = pool_.task().most_elements.find(entry.first);
        return most == pool_.task().most_elements.end() || entry.second <= most->second;
    });
}

bool PlanSearch::known_to_fail(std::span<const PlanChoice> choices, double headroom) {
    if (is_unlike(choices)) return false;
    const auto found = no_goods_.find(banks_of(choices));
    if (found == no_goods_.end()) return false;
    std::vector<double> element_w;
    for (const PlanChoice& choice : choices) {
        element_w.push_back(pool_.at(choice).verdict.element_w.front());
    }
    return std::any_of(found->second.begin(), found->second.end(), [&](const NoGood& no_good) {
        return no_good.headroom < headroom && at_least(element_w, no_good.element_w);
    });
}

const PlanVerdict& PlanSearch::together(std::span<const PlanChoice> choices) {
    const std::vector<PlanChoice> key(choices.begin(), choices.end());
    const auto known = judged_.find(key);
    if (known != judged_.end()) return known->second;
    ++joint_checks_;
    PlanVerdict verdict = pool_.task().judge->judge(circuits(choices));
    const bool fits = verdict.reason != "fit in store";
    // Where wire is chosen for heat, the power of a circuit in a plan may differ from that alone;
    // on several planes the same power may come at other hours.
    const bool by_power = !pool_.task().banks.lays_for_heat && pool_.task().one_plane;
    if (!is_unlike(choices) && (!fits || (verdict.heat_headroom < 1.0 && by_power))) {
        NoGood no_good{.headroom = verdict.heat_headroom};
        for (const PlanChoice& choice : choices) {
            no_good.element_w.push_back(fits ? pool_.at(choice).verdict.element_w.front() : 0.0);
        }
        no_goods_[banks_of(choices)].push_back(std::move(no_good));
    }
    return judged_.emplace(key, std::move(verdict)).first->second;
}

}  // namespace heatmatch
