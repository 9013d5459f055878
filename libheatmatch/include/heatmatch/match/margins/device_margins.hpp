#pragma once

#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// Margins of every device: does it break direct current at these volts and amperes, which way
/// round, how warm may its body get; string fuses and the wire behind them; and opening_margins().
[[nodiscard]] std::vector<Margin> device_margins(const Circuit& circuit, const Site& site);

}  // namespace heatmatch
