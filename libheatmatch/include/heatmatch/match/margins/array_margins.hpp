#pragma once

#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// Margins of the array and of the circuit's voltage, whatever the bank: cold voltage against the
/// panels, touch voltage, series arc, reverse current and string fuses, mismatch in strings.
[[nodiscard]] std::vector<Margin> array_margins(const Circuit& circuit, const Site& site);

}  // namespace heatmatch
