#pragma once

#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// Margins of an array of unlike panels: strings of unequal voltage, power lost by unequal panels
/// in series, bypass diodes that conduct for hours, and panels without bypass diodes that others
/// reverse. They are judged into the bank with all panels in bright sun and, where planes differ,
/// with each plane alone in the sun.
[[nodiscard]] std::vector<Margin> unlike_array_margins(const Circuit& circuit, const Site& site);

/// Whether those margins find a danger in reversed panels whatever the bank, because one is already
/// reversed too far while the load is open. Far quicker than the margins.
[[nodiscard]] bool reversed_with_load_open(const UnlikeArray& array, const Site& site);

}  // namespace heatmatch
