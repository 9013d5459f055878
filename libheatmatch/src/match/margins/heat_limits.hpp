#pragma once

#include "heat_table.hpp"
#include "screen_heat.hpp"

#include <limits>
#include <memory>
#include <vector>

namespace heatmatch {

class HeatMemory;

/// A bank in its store, and the power that its heat limits permit.
struct BankLimit {
    std::shared_ptr<const BankHeat> heat{};       //!< null without a store
    std::shared_ptr<const BankHeat> unsourced{};  //!< without assumed values, for the screen
    HeatLimit limit{};
    double careful_w = std::numeric_limits<double>::infinity();  //!< the same with unstated facts
                                                                 //!< at their careful ends [W]
    /// Power of one element at which its sheath fails, whatever the duration; likely and careful
    /// [W].
    double lasting_w = std::numeric_limits<double>::infinity();
    double careful_lasting_w = std::numeric_limits<double>::infinity();
    /// The remaining branches after one has opened, without assumed values, and the same two
    /// limits; null and infinite for one branch.
    std::shared_ptr<const BankHeat> survivors{};
    double survivor_w = std::numeric_limits<double>::infinity();
    double careful_survivor_w = std::numeric_limits<double>::infinity();
    std::shared_ptr<HeatTable> table{};
};

/// Heat limits of banks, by the number of their elements. Those kept by `memory` are reused; the
/// others are computed on several threads and kept; null keeps none. `runs` is the run at the
/// element, where no wiring changes it.
[[nodiscard]] std::vector<BankLimit> heat_limits(std::shared_ptr<const FilledStore> store,
                                                 const std::vector<const Bank*>& banks,
                                                 const std::vector<RunParts>& runs,
                                                 const std::vector<PlacedDevice>& devices,
                                                 std::size_t threads, HeatMemory* memory);

}  // namespace heatmatch
