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

/// Whether those margins find a danger in reversed panels at a load, infinite where it is open: far
/// quicker than the margins. A panel is reversed by strings of more voltage, most of all into an
/// open load, or by more current of its own string, most of all into a low resistance. So what is
/// reversed too far into an open load is so into any, and what is not, into any lower resistance.
[[nodiscard]] bool reversed_too_far(const UnlikeArray& array, const Site& site, double load_ohm);

}  // namespace heatmatch
