#pragma once

#include "circuit_lists.hpp"
#include "plan_search.hpp"

#include <algorithm>
#include <cstddef>
#include <limits>
#include <optional>
#include <vector>

namespace heatmatch {

/// Circuits of each set that may pass alone: those that are not judged yet count as passing,
/// because most are never part of a plan that is worth it.
class PlanSearch::View {
  public:
    View(CircuitPool& pool, CircuitLists& lists, const PlanRequirement& requirement)
        : pool_(pool), lists_(lists), requirement_(requirement), sets_(pool.sets()) {
        constexpr double rounding = 1.0 + 1e-9;
        if (requirement.budget) most_price_ = rounding * *requirement.budget;
    }

    [[nodiscard]] bool is_known(std::size_t set, std::size_t place) const {
        return place < sets_[set].passing.size();
    }
    /// Value of a circuit, or an upper bound where it is not known; minus infinity where there is
    /// none.
    [[nodiscard]] double at_most(std::size_t set, std::size_t place) const {
        const Seen& seen = sets_[set];
        if (place < seen.passing.size()) return lists_.value(*seen.passing[place]);
        if (seen.looked < lists_.found(set)) return lists_.value(lists_.at(set, seen.looked));
        return lists_.rest_at_most(set);
    }
    [[nodiscard]] ListedCircuit& circuit(std::size_t set, std::size_t place) const {
        return *sets_[set].passing[place];
    }
    /// One step towards the next circuit that passes.
    void advance(std::size_t set) {
        Seen& seen = sets_[set];
        if (seen.looked == lists_.found(set)) {
            lists_.step(set);
            return;
        }
        ListedCircuit& next = lists_.at(set, seen.looked);
        if (may_pass(next)) seen.passing.push_back(&next);
        ++seen.looked;
    }
    /// The array whose curve that step makes, unless it is made.
    [[nodiscard]] std::optional<std::size_t> next_array(std::size_t set) const {
        if (sets_[set].looked < lists_.found(set)) return std::nullopt;
        const auto array = lists_.next_array(set);
        if (!array || pool_.task().energies->has_season(*array)) return std::nullopt;
        return pool_.is_dead(*array) ? std::nullopt : array;
    }
    /// Whether a circuit that was judged alone meets the requirement.
    [[nodiscard]] bool passes(const PlanVerdict& verdict) const {
        if (verdict.danger || !verdict.assessed) return false;
        if (requirement_.careful && verdict.worst_danger) return false;
        if (verdict.headroom < requirement_.headroom) return false;
        if (requirement_.budget && !(verdict.price <= *requirement_.budget)) return false;
        return !requirement_.parts_max || verdict.parts <= *requirement_.parts_max;
    }

    /// Circuits whose own bill is beyond the budget.
    [[nodiscard]] std::size_t beyond_budget() const { return beyond_budget_; }
    /// Upper bound of the value at another price of money; `least_price` is that of any circuit of
    /// the set.
    [[nodiscard]] double most_at(std::size_t set, double kwh_per_price, double least_price) const {
        const Seen& seen = sets_[set];
        double most = at_most(set, seen.passing.size()) - kwh_per_price * least_price;
        for (const ListedCircuit* circuit : seen.passing) {
            most = std::max(most, circuit->kwh - kwh_per_price * circuit->price);
        }
        return most;
    }

  private:
    [[nodiscard]] bool may_pass(ListedCircuit& circuit) {
        if (circuit.cold_v > requirement_.volts_max) return false;
        if (circuit.price > most_price_) {
            ++beyond_budget_;
            return false;
        }
        if (circuit.judged) return passes(circuit.verdict);
        // Without a headroom the screen has done what the bound of it can do.
        return requirement_.headroom <= 0.0 ||
               pool_.headroom_at_most(circuit) >= requirement_.headroom;
    }

    struct Seen {
        std::vector<ListedCircuit*> passing{};
        std::size_t looked = 0;  //!< at so many of the list
    };

    CircuitPool& pool_;
    CircuitLists& lists_;
    const PlanRequirement& requirement_;
    double most_price_ = std::numeric_limits<double>::infinity();
    std::vector<Seen> sets_{};
    std::size_t beyond_budget_ = 0;
};

}  // namespace heatmatch
