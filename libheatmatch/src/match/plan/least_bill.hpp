#pragma once

#include "plan_task.hpp"

#include <cstddef>
#include <map>
#include <string>
#include <utility>
#include <vector>

namespace heatmatch {

/// How much of each part something needs, by the number of the part in a LeastBill.
using PartNeeds = std::vector<std::pair<std::size_t, double>>;

/// Lower bounds of the bill of several circuits, far quicker than the bill: what each needs at
/// least, less what is owned. What serves the whole store counts as nothing.
class LeastBill {
  public:
    explicit LeastBill(PlanTask& task) : task_(task) {}

    /// Needs of any circuit of a set of panels: listed devices, connectors and, for each run, its
    /// wire or the cheapest.
    [[nodiscard]] const PartNeeds& of_set(std::size_t set, const std::vector<std::size_t>& arrays);
    /// The same of one array.
    [[nodiscard]] const PartNeeds& of_array(std::size_t array);
    /// Typical price of the elements of a bank beyond those that are owned.
    [[nodiscard]] double of_elements(std::size_t bank);
    /// Needs of one circuit, with its elements, and their typical total.
    struct OfCircuit {
        PartNeeds needs{};
        double price = 0.0;
    };
    [[nodiscard]] const OfCircuit& of_circuit(std::size_t array, std::size_t bank);
    /// Typical total of those together, at least.
    [[nodiscard]] double at_least(const std::vector<const PartNeeds*>& circuits);

  private:
    /// A part with its price and how much of it is owned.
    struct Stock {
        double price = 0.0;
        double owned = 0.0;
    };
    using Needs = std::map<std::size_t, double>;

    [[nodiscard]] Needs needs_of_array(std::size_t array);
    void add_lines(Needs& needs, const std::vector<BillLine>& lines);
    [[nodiscard]] double owned(const BillLine& line) const;

    PlanTask& task_;
    std::map<std::string, std::size_t> numbers_{};  //!< of parts, in the stock
    std::vector<Stock> stock_{};
    std::map<std::size_t, PartNeeds> by_set_{};
    std::map<std::size_t, PartNeeds> by_array_{};
    /// What is beside the elements is the same for all banks with as many branches as the wire has.
    std::map<std::pair<std::size_t, int>, Needs> by_frame_{};
    std::map<std::pair<std::size_t, std::size_t>, OfCircuit> by_circuit_{};
    std::vector<double> sum_{};
};

}  // namespace heatmatch
