#pragma once

#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// Metal that a fault makes live and that is not stated to be bonded, by the fields to state.
struct BondingGaps {
    std::vector<std::string> open{};      //!< stated not to be bonded
    std::vector<std::string> not_told{};  //!< not stated
};
/// For the frames, and for vessel and sheaths where there is a store.
[[nodiscard]] BondingGaps bonding_gaps(const Site& site, const Store* store);

/// Whether metal that a fault makes live is bonded, where the cold voltage can kill a person who
/// touches it. @cite nec-690-43 @cite iec-60364-4-41
[[nodiscard]] Margin bonding_margin(const Circuit& circuit, const Site& site);

}  // namespace heatmatch
