#pragma once

#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// Margins of every device: whether it breaks direct current at this voltage and current, its
/// polarity, the temperature of its body; string fuses and the wire behind them; and
/// opening_margins().
[[nodiscard]] std::vector<Margin> device_margins(const Circuit& circuit, const Site& site);

}  // namespace heatmatch
