#pragma once

#include "circuit_pool.hpp"

#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <utility>
#include <vector>

namespace heatmatch {

/// The circuits of each set of panels, by falling value: their heat less a price of money. They are
/// found one by one when they are asked for: first by the bounds of their arrays, then by the
/// curves of the arrays.
class CircuitLists {
  public:
    /// `kwh_per_price` is heat that one unit of money is worth [kWh]; 0 for the heat alone. Without
    /// `unlike_banks` all elements of a bank are equal.
    CircuitLists(CircuitPool& pool, double kwh_per_price, bool unlike_banks);

    [[nodiscard]] double kwh_per_price() const { return kwh_per_price_; }
    /// Circuits found so far.
    [[nodiscard]] std::size_t found(std::size_t set) const { return sets_[set].found.size(); }
    [[nodiscard]] ListedCircuit& at(std::size_t set, std::size_t place) {
        return *sets_[set].found[place];
    }
    [[nodiscard]] double value(const ListedCircuit& circuit) const {
        return circuit.kwh - kwh_per_price_ * circuit.price;
    }
    /// Upper bound of the value of those not found yet; minus infinity where there are none.
    [[nodiscard]] double rest_at_most(std::size_t set) const;
    /// Continues the search for the next one by one step.
    void step(std::size_t set);
    /// The array whose curve the next step needs.
    [[nodiscard]] std::optional<std::size_t> next_array(std::size_t set) const;

  private:
    enum class Stage : std::uint8_t { set, array, banks, circuit };
    /// What may still lead to a circuit, with an upper bound of its value.
    struct Lead {
        double value = 0.0;
        Stage stage = Stage::set;
        std::size_t array = 0;
        std::size_t place = 0;  //!< in the banks of the array
        ListedCircuit* circuit = nullptr;

        friend bool operator<(const Lead& a, const Lead& b) {
            if (a.value != b.value) return a.value < b.value;
            return std::pair(a.array, a.place) > std::pair(b.array, b.place);
        }
    };
    struct Set {
        std::vector<Lead> leads{};  //!< a heap
        std::vector<ListedCircuit*> found{};
    };
    /// A bank that an array may feed, with its value without wire.
    struct FedBank {
        double value = 0.0;
        std::size_t bank = 0;
    };

    void push(Set& set, Lead lead);
    void open_set(std::size_t index);
    void open_array(Set& set, std::size_t array);
    void try_bank(Set& set, Lead lead);
    /// What an array needs beside a bank, at least.
    [[nodiscard]] double price_of(std::size_t array);

    CircuitPool& pool_;
    double kwh_per_price_;
    std::vector<CircuitPool::FitBank> fit_{};
    std::vector<Set> sets_{};
    std::map<std::size_t, std::vector<FedBank>> fed_{};  //!< by array, by falling value
};

}  // namespace heatmatch
