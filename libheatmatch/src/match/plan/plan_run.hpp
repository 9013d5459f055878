#pragma once

#include "plan_view.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace heatmatch {

/// One pass of a search, at one price of money.
class PlanSearch::Run {
  public:
    Run(PlanSearch& search, CircuitLists& lists, const PlanRequirement& requirement,
        const Progress& progress, Effort& effort);

    /// Continues what was found at another price until the end, or for so many combinations.
    void search(PlanOutcome& outcome, std::size_t most_looks);
    /// Whether it ended before all plans with more heat were excluded.
    [[nodiscard]] bool stopped() const { return stopped_; }
    /// Whether a larger bill excluded a plan beside one that is no longer among the best.
    [[nodiscard]] bool is_choice_open() const { return choice_open_; }
    /// The price of money at which the bound on heat is lowest, from what is known of the circuits;
    /// of a pass by heat alone [kWh for one unit of money].
    [[nodiscard]] double fair_price() const;
    /// A plan without proof where the search took too long: circuit by circuit the one with the
    /// most heat that passes with those before it.
    void grow();

  private:
    static bool less(const Node& a, const Node& b) { return a.value < b.value; }
    static constexpr double rounding = 1.0 + 1e-9;
    static constexpr std::size_t none_fails = most_planned_circuits;

    // plan_run.cpp: combinations in falling order of their bound
    void push(const Node& node);
    void fill();
    void prepare_bills();
    [[nodiscard]] bool is_of_extent(const Node& node) const;
    /// Whether a budget excludes the sets of a node; else it has their shared price.
    [[nodiscard]] bool is_beyond(Node& node);
    [[nodiscard]] double at_most(const Node& node) const;
    /// Upper bound of the heat of a node and all after it [kWh].
    [[nodiscard]] double bound(const Node& node) const { return node.value + whole_budget_kwh_; }
    /// Upper bound of the heat of all plans at a price of money, from what is known [kWh].
    [[nodiscard]] double bound_at(double kwh_per_price) const;
    /// Heat below which a plan is of no interest [kWh].
    [[nodiscard]] double near() const;
    [[nodiscard]] double top_kwh() const { return queue_.empty() ? 0.0 : bound(queue_.front()); }
    /// Whether nothing better can come, or the search is at its limit.
    [[nodiscard]] bool enough(std::size_t until);
    [[nodiscard]] std::size_t checks() const;
    void look_at(Node node);
    /// Makes the curve that the next step of a set needs, and side by side those that the next
    /// combinations are likely to need.
    void prepare(std::size_t set);
    /// The combinations in which one circuit is the next of its set. All with the failing circuit
    /// of a node fail: where one after it is the next, it stays.
    void push_next(const Node& node, std::size_t failing);
    /// Moves a place on while its circuit is too dear beside those before it, with the least of
    /// those after it.
    void pass_over(Node& node, std::size_t place) const;
    void finish();
    void tell();

    // plan_checks.cpp: what a combination must meet
    [[nodiscard]] bool exceeds_budget(const std::vector<const PartNeeds*>& needs);
    /// The first circuit of a node that with those before it is beyond the budget, with the least
    /// of those after it, or lacks elements.
    [[nodiscard]] std::size_t first_beyond(const Node& node);
    /// Keeps the circuits if they meet the requirement together. Returns the first one of the node
    /// that fails alone.
    [[nodiscard]] std::size_t try_together(const Node& node);
    [[nodiscard]] bool passes_alone(const PlanChoice& choice);
    /// Judges a circuit, and side by side those that are likely to be next.
    void judge_with_next(ListedCircuit& first);
    void keep(FoundPlan found);
    /// Whether it has more heat than the best, or may have a smaller bill.
    [[nodiscard]] bool worth_its_bill(std::span<const PlanChoice> choices, double kwh);
    [[nodiscard]] bool judge_together(std::span<const PlanChoice> choices, PlanVerdict& verdict);
    [[nodiscard]] bool within_budget(const PlanVerdict& verdict) const;
    bool fail(const std::string& reason);

    PlanSearch& search_;
    CircuitPool& pool_;
    CircuitLists& lists_;
    const PlanRequirement& requirement_;
    View view_;
    const Progress& progress_;
    Effort& effort_;
    std::optional<double> budget_{};
    bool counts_money_ = false;                //!< each circuit's bill is known before it is judged
    std::vector<const PartNeeds*> of_sets_{};  //!< of any circuit of each set
    std::vector<double> least_price_{};        //!< the same, in money
    double whole_budget_kwh_ = 0.0;  //!< heat that the budget is worth at the price of money
    PlanOutcome* outcome_ = nullptr;
    std::vector<Node> queue_{};
    std::vector<Node> begun_{};  //!< all sets of panels that the budget may allow
    bool stopped_ = false, choice_open_ = false;
};

}  // namespace heatmatch
