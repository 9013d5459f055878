#pragma once

#include "circuit_lists.hpp"
#include "circuit_pool.hpp"

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

/// Which panels a plan may use.
enum class PlanExtent {
    any,
    one_group,  //!< one circuit, of panels of one group
    one_array   //!< one circuit, of all panels
};

/// Requirements on the circuits of a plan.
struct PlanRequirement {
    double headroom = 0.0;  //!< of every check whose exceedance is a danger
    double volts_max = std::numeric_limits<double>::infinity();  //!< at the record low [V]
    int circuits_max = 3;
    PlanExtent extent = PlanExtent::any;
    std::optional<int> parts_max{};
    std::optional<double> budget{};  //!< of the typical total of the bill, in money
    bool careful = false;            //!< no danger with unstated facts at their careful ends either
    bool together = true;            //!< they are judged together in the store, not each alone
    bool unlike_banks = true;        //!< elements of a bank may differ
    bool grow = true;                //!< a plan without proof where the search takes too long
    /// Plans with less heat are of no interest [kWh].
    double least_kwh = 0.0;
    std::size_t most_checks = 3000;  //!< how often circuits are judged, alone or together
    std::size_t most_ties = 150;     //!< the same for a smaller bill, after the most heat is found
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
    std::vector<FoundPlan> kept{};                 //!< all that were found
    double at_most_kwh = 0.0;                      //!< no plan of the family has more
    bool proven = true;                            //!< `best` has the most heat of all
    std::map<std::string, std::size_t> reasons{};  //!< for which plans failed together

    /// Adds a plan.
    void keep(FoundPlan found);
    /// The smallest bill of those within 1 % of the most heat.
    void choose();
};

/// Share of the most heat from which a smaller bill is preferred.
inline constexpr double tie_of_plans = 0.99;

/// Most circuits of a plan.
inline constexpr int most_planned_circuits = 6;

/// Finds the plan with the most heat by asking for circuits in falling order of their value: of all
/// combinations the one with the largest bound is looked at first, made more exact where it is a
/// bound, and judged together once it is exact. Value is heat less a price of the money that is
/// spent (Lagrange's multiplier of the budget): with it the combinations that the budget excludes
/// come late, and the bound on heat is the value and the price of the whole budget.
class PlanSearch {
  public:
    explicit PlanSearch(CircuitPool& pool);

    [[nodiscard]] PlanOutcome best(const PlanRequirement& requirement, const Progress& progress);
    /// Checks so far; circuits together, which take far longer, count for several.
    [[nodiscard]] std::size_t effort() const {
        constexpr std::size_t alone_for_one_together = 8;
        return pool_.checks() + alone_for_one_together * joint_checks_;
    }
    /// How often circuits were judged together.
    [[nodiscard]] std::size_t joint_checks() const { return joint_checks_; }
    /// The circuits as they are described in an installation, in the order in which they are
    /// judged.
    [[nodiscard]] std::vector<ExistingCircuit> circuits(std::span<const PlanChoice> choices) const;
    /// Puts them in the order in which they lie in the store.
    void sort(std::vector<PlanChoice>& choices) const;
    /// The circuits together; kept for later searches.
    [[nodiscard]] const PlanVerdict& together(std::span<const PlanChoice> choices);
    [[nodiscard]] CircuitPool& pool() { return pool_; }

  private:
    /// A combination of sets of panels, with the place of each in the list of circuits that pass.
    struct Node {
        double value = 0.0;  //!< upper bound
        /// What the sets together cost at least beyond each alone: what is owned serves once.
        double shared_price = 0.0;
        std::uint8_t count = 0;
        std::uint8_t from = 0;  //!< places before it do not advance, so that each comes once
        std::array<std::uint32_t, most_planned_circuits> sets{};
        std::array<std::uint32_t, most_planned_circuits> places{};
    };
    /// The circuits of each set that pass a requirement alone, as far as they were looked for.
    class View;
    class Run;
    /// What the passes of one search have done.
    struct Effort {
        std::size_t begun = 0;  //!< checks before it
        std::size_t looked = 0;
        std::optional<std::size_t> ties_from{};  //!< checks when the most heat was found
    };

    /// The kinds and numbers of elements of circuits that failed together, and their power.
    struct NoGood {
        std::vector<double> element_w{};
        double headroom = 0.0;
    };
    using Banks = std::vector<std::pair<std::string, int>>;

    [[nodiscard]] Banks banks_of(std::span<const PlanChoice> choices) const;
    /// Whether the elements of a bank differ: their powers do not rise together.
    [[nodiscard]] bool is_unlike(std::span<const PlanChoice> choices) const;
    [[nodiscard]] bool known_to_fail(std::span<const PlanChoice> choices, double headroom);
    [[nodiscard]] bool has_elements(std::span<const PlanChoice> choices) const;
    void make_nodes();
    void add_nodes(Node& node, std::size_t first, const PanelCounts& left, int most);

    CircuitPool& pool_;
    CircuitLists lists_;        //!< by heat alone
    CircuitLists equal_lists_;  //!< the same, with banks of equal elements
    std::vector<Node> nodes_{};
    bool all_nodes_ = true;
    std::map<std::vector<PlanChoice>, PlanVerdict> judged_{};
    std::map<Banks, std::vector<NoGood>> no_goods_{};
    std::size_t joint_checks_ = 0;
};

}  // namespace heatmatch
