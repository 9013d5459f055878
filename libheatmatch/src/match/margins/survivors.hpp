#pragma once

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// The margin of a sheath whose neighbors have opened; `left` is what remains in the store, null or
/// not known where it cannot be computed.
[[nodiscard]] Margin survivor_sheath_in(const Circuit& circuit, const BankHeat* left,
                                        double survivor_w);

}  // namespace heatmatch
