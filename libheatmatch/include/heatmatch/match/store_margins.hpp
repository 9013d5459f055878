#pragma once

#include <vector>

#include "heatmatch/match/circuit.hpp"
#include "heatmatch/match/margin.hpp"

namespace heatmatch {

/// Margins of the heat store: sheath, coil, end seal, wall and lid, ceiling, stagnation, dry-out.
/// The model of the bed is not part of this version: each is listed as not assessed.
[[nodiscard]] std::vector<Margin> store_margins(const Circuit& circuit,
                                                const Installation& installation);

}  // namespace heatmatch
