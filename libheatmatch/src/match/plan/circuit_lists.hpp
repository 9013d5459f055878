#pragma once

#include "array_energies.hpp"
#include "bright_arrays.hpp"
#include "match/rank/screen.hpp"

#include <cstddef>
#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "heatmatch/match/plan/array_family.hpp"
#include "heatmatch/match/plan/plan_judge.hpp"

namespace heatmatch {

/// Whether a filter allows that element to be bought.
[[nodiscard]] bool may_buy(const Element& element, const ElementFilter& filter);

/// All inputs of a plan, prepared once.
struct PlanTask {
    std::shared_ptr<const Parts> parts{};
    Installation yard{};  //!< with the runs and devices of one circuit
    RankOptions options{};
    std::shared_ptr<const Weather> weather{};
    ArrayFamily family{};
    ScreenContext banks{};  //!< banks of equal elements, with the limits of their heat
    std::vector<const BankNumbers*> numbers{};  //!< of each bank
    /// Elements that are owned and not for sale, with their number.
    std::map<std::string, int> most_elements{};
    bool one_plane = true;     //!< no group states a plane of its own
    std::string pattern_of{};  //!< of several existing circuits, the one whose runs are used
    std::unique_ptr<PlanJudge> judge{};
    std::unique_ptr<ArrayEnergies> energies{};

    /// Throws InvalidInput where the installation lacks what a plan needs.
    [[nodiscard]] static std::unique_ptr<PlanTask> make(const Parts& catalog,
                                                        const Installation& installation,
                                                        const RankOptions& options);
    [[nodiscard]] ExistingCircuit circuit(std::size_t array, std::size_t bank) const;
};

/// A circuit of some panels, with what is known of it.
struct ListedCircuit {
    std::size_t array = 0;
    std::size_t bank = 0;
    double kwh = 0.0;            //!< of the season, after the wire of the circuit alone
    double most_headroom = 1.0;  //!< upper bound
    double cold_v = 0.0;         //!< of its array at the record low [V]
    bool judged = false;         //!< the whole verdict holds
    PlanVerdict verdict{};       //!< of the circuit alone
};

/// The circuits of each set of panels, by falling heat. They are found one by one when they are
/// asked for: first by the bounds of their arrays, then by the curves of the arrays, and judged
/// last.
class CircuitLists {
  public:
    explicit CircuitLists(PlanTask& task);

    [[nodiscard]] std::size_t size() const { return sets_.size(); }
    [[nodiscard]] const PanelCounts& panels(std::size_t set) const { return sets_[set].panels; }
    [[nodiscard]] const std::vector<std::size_t>& arrays(std::size_t set) const {
        return sets_[set].arrays;
    }
    [[nodiscard]] std::optional<std::size_t> find(const PanelCounts& panels) const;
    /// Circuits found so far.
    [[nodiscard]] std::size_t found(std::size_t set) const { return sets_[set].found.size(); }
    [[nodiscard]] ListedCircuit& at(std::size_t set, std::size_t place) {
        return sets_[set].found[place];
    }
    /// Upper bound of the heat of those not found yet; below 0 where there are none [kWh].
    [[nodiscard]] double rest_at_most_kwh(std::size_t set) const;
    /// Continues the search for the next one by one step.
    void step(std::size_t set);
    /// Upper bound of its headroom, from what is known of its array.
    [[nodiscard]] double headroom_at_most(const ListedCircuit& circuit) const;
    /// Judges one alone, unless it is.
    void judge(ListedCircuit& circuit);
    [[nodiscard]] std::size_t checks() const { return checks_; }
    /// How many circuits a screen rejected, by the reason.
    [[nodiscard]] const std::map<std::string, std::size_t>& reasons() const { return reasons_; }
    [[nodiscard]] PlanTask& task() { return task_; }

  private:
    enum class Stage : std::uint8_t { set, array, banks, circuit };
    /// What may still lead to a circuit, with an upper bound of its heat.
    struct Lead {
        double kwh = 0.0;
        Stage stage = Stage::set;
        std::size_t array = 0;
        std::size_t place = 0;  //!< in the banks of the array, or the circuit among `waiting`
    };
    struct Set {
        PanelCounts panels{};
        std::vector<std::size_t> arrays{};
        std::vector<Lead> leads{};  //!< a heap
        std::vector<ListedCircuit> waiting{};
        std::vector<ListedCircuit> found{};
    };
    /// A bank that an array may feed, with its heat without wire.
    struct FedBank {
        double kwh = 0.0;
        std::size_t bank = 0;
    };

    /// A bank of which every deciding margin can be assessed, as far as its facts say.
    struct FitBank {
        std::size_t bank = 0;
        std::size_t ohm = 0;  //!< in the list of resistances
    };

    /// The deciding margin that lacks a fact of the bank with any array; empty if none does.
    [[nodiscard]] std::string_view never_assessed(std::size_t bank) const;
    void push(Set& set, Lead lead);
    void open_set(Set& set);
    void open_array(Set& set, std::size_t array);
    /// Whether an array is a danger with any bank, as far as a quick check says.
    [[nodiscard]] bool is_dead(std::size_t array);
    void try_bank(Set& set, Lead lead);
    /// A circuit without its bank, at its site.
    struct Frame {
        Circuit circuit{};
        Site site{};
    };
    [[nodiscard]] Frame& frame(std::size_t array, std::size_t bank);
    [[nodiscard]] std::optional<ListedCircuit> screened(std::size_t array, std::size_t bank);
    [[nodiscard]] bool is_reversed(std::size_t array, const Circuit& circuit, const Site& site);
    void reject(const std::string& reason) { ++reasons_[reason]; }

    PlanTask& task_;
    std::vector<double> ohms_{};  //!< of the banks, each once
    std::vector<FitBank> fit_{};
    std::vector<Set> sets_{};
    std::map<PanelCounts, std::size_t> by_panels_{};
    std::map<std::size_t, std::vector<FedBank>> fed_{};  //!< by array, by falling heat
    std::map<std::pair<std::size_t, int>, Frame> frames_{};
    BrightArrays bright_{};
    std::map<std::size_t, bool> dead_{};  //!< arrays with a danger whatever the bank
    /// Of unlike arrays: loads of that resistance or less reverse a panel too far [ohm].
    std::map<std::size_t, double> reversed_below_ohm_{};
    /// Of arrays that were judged: headroom of what depends on no bank.
    std::map<std::size_t, double> array_headroom_{};
    std::map<std::string, std::size_t> reasons_{};
    std::size_t checks_ = 0;
};

}  // namespace heatmatch
