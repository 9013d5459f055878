#pragma once

#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// Margins of every device: does it break direct current at these volts and amperes, which way
/// round, how warm may its body get; and whether something breaks and something limits at all.
[[nodiscard]] std::vector<Margin> device_margins(const Circuit& circuit, const Site& site);

/// Whether an over-temperature limit that stays open is listed, and a device it can open.
[[nodiscard]] bool has_independent_limit(const std::vector<PlacedDevice>& devices);

}  // namespace heatmatch
