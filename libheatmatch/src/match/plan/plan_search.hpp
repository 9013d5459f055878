#pragma once

#include "circuit_lists.hpp"
#include "least_bill.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <map>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <vector>

namespace heatmatch {

/// Requirements on the circuits of a plan.
struct PlanRequirement {
    double headroom = 0.0;  //!< of every check whose exceedance is a danger
    double volts_max = std::numeric_limits<double>::infinity();  //!< at the record low [V]
    int circuits_max = 3;
    std::optional<int> parts_max{};
    bool careful = false;  //!< no danger with unstated facts at their careful ends either
    bool budget = true;    //!< the bill is within the budget
    bool together = true;  //!< they are judged together in the store, not each alone
    bool grow = true;      //!< a plan without proof where the search takes too long
    /// Plans with less heat are of no interest [kWh].
    double least_kwh = 0.0;
    std::size_t most_checks = 3000;  //!< how often circuits are judged, alone or together
    std::size_t most_ties = 150;     //!< the same for a smaller bill, after the most heat is found
};

/// One circuit of a plan: its set of panels, and its place among the circuits of that set.
struct PlanChoice {
    std::size_t set = 0;
    std::size_t place = 0;

    friend bool operator==(const PlanChoice&, const PlanChoice&) = default;
    friend bool operator<(const PlanChoice& a, const PlanChoice& b) {
        return a.set != b.set ? a.set < b.set : a.place < b.place;
    }
};

/// Circuits that meet a requirement together.
struct FoundPlan {
    std::vector<PlanChoice> circuits{};
    double kwh = 0.0;
    PlanVerdict verdict{};
};

/// Result of a search.
struct PlanOutcome {
    std::optional<FoundPlan> best{};               //!< most heat
    std::optional<FoundPlan> chosen{};             //!< of those within 1 % of it, the smallest bill
    std::vector<FoundPlan> first{};                //!< up to five, by falling heat
    double at_most_kwh = 0.0;                      //!< no plan of the family has more
    bool proven = true;                            //!< `best` has the most heat of all
    std::map<std::string, std::size_t> reasons{};  //!< for which plans failed together

    /// Adds a plan with no more heat than those before it.
    void keep(FoundPlan found);
};

/// Most circuits of a plan.
inline constexpr int most_planned_circuits = 6;

/// Finds the plan with the most heat by asking for circuits in falling order of their heat: of all
/// combinations the one with the largest bound is looked at first, made more exact where it is a
/// bound, and judged together once it is exact. The first that passes has the most heat.
class PlanSearch {
  public:
    explicit PlanSearch(CircuitLists& lists);

    [[nodiscard]] PlanOutcome best(const PlanRequirement& requirement, const Progress& progress);
    /// How often circuits were judged together.
    [[nodiscard]] std::size_t joint_checks() const { return joint_checks_; }
    /// The circuits as they are described in an installation, in the order in which they are
    /// judged.
    [[nodiscard]] std::vector<ExistingCircuit> circuits(std::span<const PlanChoice> choices);
    /// Puts them in the order in which they lie in the store.
    void sort(std::vector<PlanChoice>& choices);
    /// The circuits together; kept for later searches.
    [[nodiscard]] const PlanVerdict& together(std::span<const PlanChoice> choices);
    [[nodiscard]] CircuitLists& lists() { return lists_; }

  private:
    /// A combination of sets of panels, with the place of each in the list of circuits that pass.
    struct Node {
        double kwh = 0.0;
        std::uint8_t count = 0;
        std::uint8_t from = 0;  //!< places before it do not advance, so that each comes once
        std::array<std::uint32_t, most_planned_circuits> sets{};
        std::array<std::uint32_t, most_planned_circuits> places{};
    };
    /// The circuits of each set that pass a requirement alone, as far as they were looked for.
    class View;
    class Run;

    /// The kinds and numbers of elements of circuits that failed together, and their power.
    struct NoGood {
        std::vector<double> element_w{};
        double headroom = 0.0;
    };
    using Banks = std::vector<std::pair<std::string, int>>;

    [[nodiscard]] Banks banks_of(std::span<const PlanChoice> choices);
    [[nodiscard]] bool known_to_fail(std::span<const PlanChoice> choices, double headroom);
    [[nodiscard]] bool has_elements(std::span<const PlanChoice> choices);
    void make_nodes();
    void add_nodes(Node& node, std::size_t first, const PanelCounts& left, int most);

    CircuitLists& lists_;
    LeastBill least_bill_;
    std::vector<Node> nodes_{};
    bool all_nodes_ = true;
    std::map<std::vector<PlanChoice>, PlanVerdict> judged_{};
    std::map<Banks, std::vector<NoGood>> no_goods_{};
    std::size_t joint_checks_ = 0;
};

}  // namespace heatmatch
