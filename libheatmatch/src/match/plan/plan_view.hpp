#pragma once

#include "plan_search.hpp"

#include <cstddef>
#include <vector>

namespace heatmatch {

/// Circuits of each set that may pass alone: those that are not judged yet count as passing,
/// because most are never part of a plan that is worth it.
class PlanSearch::View {
  public:
    View(CircuitLists& lists, const PlanRequirement& requirement)
        : lists_(lists), requirement_(requirement), sets_(lists.size()) {}

    [[nodiscard]] bool is_known(std::size_t set, std::size_t place) const {
        return place < sets_[set].passing.size();
    }
    /// Heat of a circuit, or an upper bound where it is not known; below 0 where there is none.
    [[nodiscard]] double at_most_kwh(std::size_t set, std::size_t place) const {
        const Seen& seen = sets_[set];
        if (place < seen.passing.size()) return lists_.at(set, seen.passing[place]).kwh;
        if (seen.looked < lists_.found(set)) return lists_.at(set, seen.looked).kwh;
        return lists_.rest_at_most_kwh(set);
    }
    [[nodiscard]] PlanChoice choice(std::size_t set, std::size_t place) const {
        return {.set = set, .place = sets_[set].passing[place]};
    }
    /// One step towards the next circuit that passes.
    void advance(std::size_t set) {
        Seen& seen = sets_[set];
        if (seen.looked == lists_.found(set)) {
            lists_.step(set);
            return;
        }
        if (may_pass(lists_.at(set, seen.looked))) seen.passing.push_back(seen.looked);
        ++seen.looked;
    }
    /// Whether a circuit that was judged alone meets the requirement.
    [[nodiscard]] bool passes(const PlanVerdict& verdict) const {
        if (verdict.danger || !verdict.assessed) return false;
        if (requirement_.careful && verdict.worst_danger) return false;
        if (verdict.headroom < requirement_.headroom) return false;
        if (requirement_.budget && !verdict.affordable) return false;
        return !requirement_.parts_max || verdict.parts <= *requirement_.parts_max;
    }

  private:
    [[nodiscard]] bool may_pass(const ListedCircuit& circuit) const {
        if (lists_.headroom_at_most(circuit) < requirement_.headroom) return false;
        if (circuit.cold_v > requirement_.volts_max) return false;
        return !circuit.judged || passes(circuit.verdict);
    }

    struct Seen {
        std::vector<std::size_t> passing{};  //!< places in the list
        std::size_t looked = 0;              //!< at so many of them
    };

    CircuitLists& lists_;
    const PlanRequirement& requirement_;
    std::vector<Seen> sets_{};
};

}  // namespace heatmatch
