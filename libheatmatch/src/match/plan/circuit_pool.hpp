#pragma once

#include "array_energies.hpp"
#include "bright_arrays.hpp"
#include "least_bill.hpp"
#include "plan_task.hpp"

#include <cstddef>
#include <limits>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace heatmatch {

/// A circuit of a plan: its array and its bank, by their places in the task.
struct PlanChoice {
    std::size_t array = 0;
    std::size_t bank = 0;

    friend bool operator==(const PlanChoice&, const PlanChoice&) = default;
    friend bool operator<(const PlanChoice& a, const PlanChoice& b) {
        return a.array != b.array ? a.array < b.array : a.bank < b.bank;
    }
};

/// An array with the wires of its runs, where one of them is chosen for the heat of the bank.
struct WiredArray {
    std::size_t array = 0;
    std::vector<std::string> wires{};  //!< ids of wire and insulation; empty where none depends

    friend bool operator<(const WiredArray& a, const WiredArray& b) {
        return a.array != b.array ? a.array < b.array : a.wires < b.wires;
    }
};

/// A fact that deciding margins of circuits lack.
struct LackedFact {
    std::size_t circuits = 0;
    PlanChoice example{};  //!< one of those circuits
};

/// A circuit of some panels, with what is known of it.
struct ListedCircuit {
    PlanChoice choice{};
    WiredArray wired{};
    double kwh = 0.0;                   //!< of the season, after the wire of the circuit alone
    double price = 0.0;                 //!< of its whole bill at least, with all that is owned
    double most_headroom = 1.0;         //!< upper bound
    std::optional<double> element_w{};  //!< largest power of an element, while no bound uses it [W]
    double cold_v = 0.0;                //!< of its array at the record low [V]
    bool judged = false;                //!< the whole verdict holds
    PlanVerdict verdict{};              //!< of the circuit alone
};

/// The circuits of a yard, each made, screened and judged once, when it is first asked for.
class CircuitPool {
  public:
    /// A bank of which every deciding margin can be assessed, as far as its facts say.
    struct FitBank {
        std::size_t bank = 0;
        std::size_t ohm = 0;  //!< in the list of resistances
        double price = 0.0;   //!< of its elements beyond those that are owned
    };

    explicit CircuitPool(PlanTask& task);

    /// Sets of panels that are those of an array.
    [[nodiscard]] std::size_t sets() const { return sets_.size(); }
    [[nodiscard]] const PanelCounts& panels(std::size_t set) const { return sets_[set].panels; }
    [[nodiscard]] const std::vector<std::size_t>& arrays(std::size_t set) const {
        return sets_[set].arrays;
    }
    [[nodiscard]] std::optional<std::size_t> find(const PanelCounts& panels) const;
    [[nodiscard]] std::size_t set_of(const PlanChoice& choice) const {
        return set_of_array_[choice.array];
    }

    [[nodiscard]] const std::vector<FitBank>& fit() const { return fit_; }
    /// Resistances of the banks, each once; those of equal elements first.
    [[nodiscard]] std::span<const double> ohms() const { return ohms_; }
    [[nodiscard]] std::span<const double> equal_ohms() const {
        return std::span(ohms_).first(equal_ohms_);
    }

    /// Whether an array is a danger with any bank, as far as a quick check says.
    [[nodiscard]] bool is_dead(std::size_t array);
    /// The circuit, or null where a quick check finds a danger.
    [[nodiscard]] ListedCircuit* screened(const PlanChoice& choice);
    /// A circuit that was not rejected.
    [[nodiscard]] ListedCircuit& at(const PlanChoice& choice) { return *made_.at(choice); }
    [[nodiscard]] const std::map<PlanChoice, std::optional<ListedCircuit>>& made() const {
        return made_;
    }
    /// Upper bound of its headroom, from what is known of its array.
    [[nodiscard]] double headroom_at_most(ListedCircuit& circuit);
    /// Judges each alone, unless it is, side by side.
    void judge(std::span<ListedCircuit* const> circuits);
    [[nodiscard]] std::size_t checks() const { return checks_; }
    /// How many circuits a screen rejected, by the reason.
    [[nodiscard]] const std::map<std::string, std::size_t>& reasons() const { return reasons_; }
    /// Facts that deciding margins of circuits lack, by field and subject of the margin.
    [[nodiscard]] const std::map<std::pair<std::string, std::string>, LackedFact>& lacking() const {
        return lacking_;
    }
    [[nodiscard]] PlanTask& task() { return task_; }
    [[nodiscard]] LeastBill& least_bill() { return least_bill_; }

  private:
    struct Set {
        PanelCounts panels{};
        std::vector<std::size_t> arrays{};
    };
    /// A circuit without its bank, at its site.
    struct Frame {
        Circuit circuit{};
        Site site{};
    };

    /// The deciding margin that lacks a fact of the bank with any array; empty if none does.
    [[nodiscard]] std::string_view never_assessed(std::size_t bank) const;
    [[nodiscard]] Frame& frame(const PlanChoice& choice);
    [[nodiscard]] std::optional<ListedCircuit> screen(const PlanChoice& choice);
    /// Checks the elements of a listed circuit in cold, bright weather by the limits of each alone
    /// in the store, with so much more wire; the margin that finds a danger, or nothing.
    [[nodiscard]] std::string check_elements(const Circuit& circuit, const Site& site,
                                             double more_ohm, ListedCircuit& listed);
    [[nodiscard]] bool is_reversed(std::size_t array, const Circuit& circuit, const Site& site);
    /// Why a circuit is a danger or can not be judged whatever its bank; null where that is not
    /// known.
    [[nodiscard]] const std::string* fails_with_any(const ListedCircuit& circuit);
    /// Keeps what a verdict says of other circuits.
    void note(const ListedCircuit& circuit);
    void reject(const std::string& reason) { ++reasons_[reason]; }

    PlanTask& task_;
    LeastBill least_bill_;
    std::vector<double> ohms_{};
    std::size_t equal_ohms_ = 0;    //!< of banks of equal elements
    double most_chosen_ohm_ = 0.0;  //!< of wire that is chosen, at most [ohm]
    std::vector<FitBank> fit_{};
    std::vector<Set> sets_{};
    std::vector<std::size_t> set_of_array_{};
    std::map<PanelCounts, std::size_t> by_panels_{};
    std::map<PlanChoice, std::optional<ListedCircuit>> made_{};
    std::map<std::pair<std::size_t, int>, Frame> frames_{};
    BrightArrays bright_{};
    std::map<std::size_t, bool> dead_{};  //!< arrays with a danger whatever bank and wire
    /// Reasons of those that fail with any bank for which they have these wires.
    std::map<WiredArray, std::string> failing_{};
    /// Of an unlike array [ohm].
    struct Reversal {
        double reversed_ohm = 0.0;  //!< that load or less reverses a panel too far
        double held_ohm = std::numeric_limits<double>::infinity();  //!< that or more does not
    };
    std::map<std::size_t, Reversal> reversed_{};
    /// Of arrays that were judged: headroom of what depends on no bank.
    std::map<WiredArray, double> array_headroom_{};
    std::map<std::string, std::size_t> reasons_{};
    std::map<std::pair<std::string, std::string>, LackedFact> lacking_{};
    std::size_t checks_ = 0;
};

}  // namespace heatmatch
