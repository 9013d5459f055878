#pragma once

#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// Margins of the array and of the circuit voltage, independent of the bank: cold voltage of the
/// panels, touch voltage, series arc, reverse current and string fuses, mismatch in strings.
[[nodiscard]] std::vector<Margin> array_margins(const Circuit& circuit, const Site& site);

}  // namespace heatmatch
