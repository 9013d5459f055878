#pragma once

#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/limits.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// Margins of the elements: power, voltage across the element and to the sheath, power of the
/// remaining branches, earth fault, built-in controls, terminals, shade stress, voltage drop.
[[nodiscard]] std::vector<Margin> bank_margins(const Circuit& circuit, const Extremes& extremes);
/// Those of the element alone.
[[nodiscard]] std::vector<Margin> element_margins(const Circuit& circuit, const Extremes& extremes);
/// Those of the bank as a load: shade stress, voltage drop.
[[nodiscard]] std::vector<Margin> load_margins(const Circuit& circuit);

}  // namespace heatmatch
