#pragma once

#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// Margins of string protection: whether it has a sufficient current rating and clears the string's
/// voltage, and whether the wire behind it may have a fuse of that rating. A rating exactly at the
/// code's limit gives no finding. @cite nec-690-9 @cite nec-240-4
[[nodiscard]] std::vector<Margin> fuse_margins(const Circuit& circuit, const PlacedDevice& placed);

}  // namespace heatmatch
