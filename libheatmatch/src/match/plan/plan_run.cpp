#include "plan_view.hpp"

#include <algorithm>
#include <tuple>
#include <utility>

namespace heatmatch {

/// One search.
class PlanSearch::Run {
  public:
    Run(PlanSearch& search, const PlanRequirement& requirement, const Progress& progress)
        : search_(search),
          lists_(search.lists_),
          requirement_(requirement),
          view_(search.lists_, requirement),
          progress_(progress) {}

    PlanOutcome best() {
        tell_progress(progress_, 0.0);
        fill();
        while (!queue_.empty()) {
            if (enough()) break;
            std::pop_heap(queue_.begin(), queue_.end(), less);
            const Node node = queue_.back();
            queue_.pop_back();
            look_at(node);
            tell();
        }
        if (stopped_ && !outcome_.best && requirement_.grow) grow();
        finish();
        return std::move(outcome_);
    }

  private:
    static bool less(const Node& a, const Node& b) { return a.kwh < b.kwh; }

    void push(const Node& node) {
        queue_.push_back(node);
        std::push_heap(queue_.begin(), queue_.end(), less);
    }

    void fill() {
        const bool money = requirement_.budget && lists_.task().yard.goals.budget;
        for (Node node : search_.nodes_) {
            if (node.count > requirement_.circuits_max) continue;
            if (money && node.count > 1) {
                std::vector<const PartNeeds*> needs;
                for (std::size_t i = 0; i < node.count; ++i) {
                    needs.push_back(&search_.least_bill_.of_set(lists_, node.sets[i]));
                }
                if (exceeds_budget(needs)) {
                    ++outcome_.reasons["budget"];
                    continue;
                }
            }
            node.kwh = at_most(node);
            if (node.kwh > 0.0) queue_.push_back(node);
        }
        std::make_heap(queue_.begin(), queue_.end(), less);
    }

    [[nodiscard]] bool exceeds_budget(const std::vector<const PartNeeds*>& needs) {
        constexpr double rounding = 1.0 + 1e-9;
        return search_.least_bill_.at_least(needs) > rounding * *lists_.task().yard.goals.budget;
    }

    [[nodiscard]] double at_most(const Node& node) const {
        double sum = 0.0;
        for (std::size_t i = 0; i < node.count; ++i) {
            const double kwh = view_.at_most_kwh(node.sets[i], node.places[i]);
            if (kwh < 0.0) return -1.0;
            sum += kwh;
        }
        return sum;
    }

    /// Whether nothing better can come, or the search is at its limit.
    bool enough() {
        const double top = queue_.front().kwh;
        const double near = outcome_.best ? tie * outcome_.best->kwh : requirement_.least_kwh;
        if (top < near) return true;
        const std::size_t most = outcome_.best ? ties_until_ : requirement_.most_checks;
        if (checks() < most && looked_ < most_looks) return false;
        stopped_ = true;
        return true;
    }

    [[nodiscard]] std::size_t checks() const {
        return lists_.checks() + search_.joint_checks_ - begun_;
    }

    void look_at(Node node) {
        const double now = at_most(node);
        if (now < 0.0) return;
        constexpr double rounding = 1e-12;
        if (now < node.kwh * (1.0 - rounding)) {
            node.kwh = now;
            push(node);
            return;
        }
        for (std::size_t i = 0; i < node.count; ++i) {
            if (view_.is_known(node.sets[i], node.places[i])) continue;
            view_.advance(node.sets[i]);
            node.kwh = at_most(node);
            if (node.kwh >= 0.0) push(node);
            return;
        }
        push_next(node, try_together(node));
    }

    /// The combinations in which one circuit is the next of its set. All with the failing circuit
    /// of a node fail: where one after it is the next, it stays.
    void push_next(const Node& node, std::size_t failing) {
        const std::size_t end = std::min<std::size_t>(node.count, failing + 1);
        for (std::size_t i = node.from; i < end; ++i) {
            // Of equal sets the earlier one has the later circuit.
            const bool equal = i > 0 && node.sets[i] == node.sets[i - 1];
            if (equal && node.places[i] + 1 > node.places[i - 1]) continue;
            Node more = node;
            ++more.places[i];
            more.from = static_cast<std::uint8_t>(i);
            more.kwh = at_most(more);
            if (more.kwh >= 0.0) push(more);
        }
    }

    static constexpr std::size_t none_fails = most_planned_circuits;

    /// Keeps the circuits if they meet the requirement together. Returns the first one of the node
    /// that fails alone.
    std::size_t try_together(const Node& node) {
        std::vector<PlanChoice> choices;
        for (std::size_t i = 0; i < node.count; ++i) {
            choices.push_back(view_.choice(node.sets[i], node.places[i]));
        }
        for (std::size_t i = 0; i < node.count; ++i) {
            const ListedCircuit& listed = lists_.at(choices[i].set, choices[i].place);
            if (listed.judged && !view_.passes(listed.verdict)) return i;
        }
        if (!search_.has_elements(choices) || !worth_its_bill(choices)) return none_fails;
        for (std::size_t i = 0; i < node.count; ++i) {
            if (!passes_alone(choices[i])) return i;
        }
        if (choices.size() > 1) search_.sort(choices);
        FoundPlan found{.circuits = choices, .kwh = node.kwh};
        if (node.count == 1) {
            found.verdict = lists_.at(choices.front().set, choices.front().place).verdict;
        } else if (!judge_together(choices, found.verdict)) {
            return none_fails;
        }
        keep(std::move(found));
        return none_fails;
    }

    [[nodiscard]] bool passes_alone(const PlanChoice& choice) {
        ListedCircuit& listed = lists_.at(choice.set, choice.place);
        lists_.judge(listed);
        return view_.passes(listed.verdict);
    }

    void keep(FoundPlan found) {
        if (!outcome_.best) ties_until_ = checks() + requirement_.most_ties;
        outcome_.keep(std::move(found));
    }

    /// Whether the bill may be within the budget and, where a plan is known, smaller than that.
    bool worth_its_bill(std::span<const PlanChoice> choices) {
        const bool money = requirement_.budget && lists_.task().yard.goals.budget;
        if (lists_.task().banks.lays_for_heat || !(money || outcome_.best)) return true;
        std::vector<const PartNeeds*> needs;
        for (const PlanChoice& choice : choices) {
            const ListedCircuit& listed = lists_.at(choice.set, choice.place);
            needs.push_back(&search_.least_bill_.of_circuit(listed.array, listed.bank));
        }
        if (money && exceeds_budget(needs)) return fail("budget");
        // Among ties only a smaller bill is of interest, or as small a one of fewer circuits.
        const double least = search_.least_bill_.at_least(needs);
        return !outcome_.best ||
               std::pair(least, choices.size()) <
                   std::pair(outcome_.chosen->verdict.price, outcome_.chosen->circuits.size());
    }

    bool judge_together(std::span<const PlanChoice> choices, PlanVerdict& verdict) {
        if (!requirement_.together) {
            verdict = lists_.task().judge->price(search_.circuits(choices));
            return !requirement_.budget || verdict.affordable || fail("budget");
        }
        if (search_.known_to_fail(choices, requirement_.headroom)) return fail("heat together");
        verdict = search_.together(choices);
        if (verdict.danger || !verdict.assessed) return fail(verdict.reason);
        if (requirement_.careful && verdict.worst_danger) return fail("unstated facts");
        if (verdict.headroom < requirement_.headroom) return fail(verdict.reason);
        if (requirement_.budget && !verdict.affordable) return fail("budget");
        const auto& parts_max = requirement_.parts_max;
        if (parts_max && verdict.parts > *parts_max) return fail("parts_max");
        return true;
    }

    bool fail(const std::string& reason) {
        ++outcome_.reasons[reason];
        return false;
    }

    /// A plan without proof where the search took too long: circuit by circuit the one with the
    /// most heat that passes with those before it.
    void grow() {
        open_ = true;
        std::vector<Node> firsts;
        constexpr int most_steps = 300;
        for (std::uint32_t set = 0; set < lists_.size(); ++set) {
            std::uint32_t place = 0;
            bool found = false;
            for (int step = 0; step < most_steps && !found; ++step) {
                if (view_.is_known(set, place)) {
                    found = passes_alone(view_.choice(set, place));
                    if (!found) ++place;
                } else if (view_.at_most_kwh(set, place) >= 0.0) {
                    view_.advance(set);
                } else {
                    break;
                }
            }
            if (!found) continue;
            Node node{.kwh = view_.at_most_kwh(set, place), .count = 1};
            node.sets[0] = set;
            node.places[0] = place;
            firsts.push_back(node);
        }
        std::sort(firsts.begin(), firsts.end(),
                  [](const Node& a, const Node& b) { return a.kwh > b.kwh; });
        std::vector<PlanChoice> choices;
        PanelCounts left;
        for (const OwnedPanels& owned : lists_.task().yard.panels) left.push_back(owned.count);
        FoundPlan best;
        for (const Node& node : firsts) {
            if (static_cast<int>(choices.size()) == requirement_.circuits_max) break;
            const PanelCounts& panels = lists_.panels(node.sets[0]);
            if (!fits_in(panels, left)) continue;
            std::vector<PlanChoice> more = choices;
            more.push_back(view_.choice(node.sets[0], node.places[0]));
            search_.sort(more);
            FoundPlan found{.circuits = more, .kwh = best.kwh + node.kwh};
            if (!search_.has_elements(more)) continue;
            if (more.size() == 1) {
                found.verdict = lists_.at(more.front().set, more.front().place).verdict;
            } else if (!judge_together(more, found.verdict)) {
                continue;
            }
            best = std::move(found);
            choices = std::move(more);
            for (std::size_t g = 0; g < left.size(); ++g) left[g] -= panels[g];
        }
        if (choices.empty()) return;
        outcome_.best = best;
        outcome_.chosen = best;
        outcome_.first.push_back(std::move(best));
    }

    void finish() {
        const double top = queue_.empty() ? 0.0 : queue_.front().kwh;
        outcome_.proven = !open_ && search_.all_nodes_;
        outcome_.at_most_kwh = outcome_.best ? outcome_.best->kwh : requirement_.least_kwh;
        if (open_) outcome_.at_most_kwh = top;
        if (search_.all_nodes_) return;
        PanelCounts all;
        for (const OwnedPanels& owned : lists_.task().yard.panels) all.push_back(owned.count);
        outcome_.at_most_kwh = lists_.task().energies->largest_kwh(all);
    }

    void tell() {
        constexpr std::size_t often = 64;
        if (++looked_ % often != 0) return;
        const double share =
            static_cast<double>(checks()) / static_cast<double>(requirement_.most_checks + 1);
        tell_progress(progress_, std::min(1.0, share));
    }

    static constexpr double tie = 0.99;
    /// Combinations that are looked at, at most.
    static constexpr std::size_t most_looks = 150000;

    PlanSearch& search_;
    CircuitLists& lists_;
    const PlanRequirement& requirement_;
    View view_;
    const Progress& progress_;
    PlanOutcome outcome_{};
    std::vector<Node> queue_{};
    std::size_t begun_ = lists_.checks() + search_.joint_checks_;
    std::size_t ties_until_ = 0;
    std::size_t looked_ = 0;
    bool stopped_ = false, open_ = false;
};

PlanOutcome PlanSearch::best(const PlanRequirement& requirement, const Progress& progress) {
    return Run(*this, requirement, progress).best();
}

}  // namespace heatmatch
