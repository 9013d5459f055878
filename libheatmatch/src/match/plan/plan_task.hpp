#pragma once

#include "array_energies.hpp"
#include "match/rank/screen.hpp"

#include <cstddef>
#include <map>
#include <memory>
#include <string>
#include <vector>

#include "heatmatch/match/plan/array_family.hpp"
#include "heatmatch/match/plan/plan_banks.hpp"
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
    std::vector<const BankNumbers*> numbers{};  //!< of each bank of equal elements
    std::vector<Bank> unlike{};                 //!< banks of owned elements that differ
    /// Where one element of each id alone is among the banks.
    std::map<std::string, std::size_t> alone{};
    int most_in_unlike = most_planned_in_tree;  //!< elements in such a bank, at most
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
    /// Banks of equal elements, then those of unlike elements.
    [[nodiscard]] std::size_t bank_count() const { return banks.banks.size() + unlike.size(); }
    [[nodiscard]] const Bank& bank(std::size_t index) const {
        const std::size_t equal = banks.banks.size();
        return index < equal ? banks.banks[index] : unlike[index - equal];
    }
    /// Limits of one element of a kind alone in the store.
    [[nodiscard]] const BankNumbers& limits_of(const std::string& element) const {
        return *numbers[alone.at(element)];
    }
};

}  // namespace heatmatch
