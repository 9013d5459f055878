#pragma once

#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// Margins of what protects a string: whether it holds the string's current and clears its volts,
/// and whether the wire behind it may be fused so high. A rating of just what the code allows is no
/// finding. @cite nec-690-9 @cite nec-240-4
[[nodiscard]] std::vector<Margin> fuse_margins(const Circuit& circuit, const PlacedDevice& placed);

}  // namespace heatmatch
