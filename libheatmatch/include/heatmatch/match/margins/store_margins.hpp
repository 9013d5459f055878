#pragma once

#include <optional>
#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// Margins of the store itself: the fill's ceiling and moisture, wall and lid against wood and
/// touch. Walls are judged at the fill's high conductivity. What is not known is not assessed.
[[nodiscard]] std::vector<Margin> store_margins(const Circuit& circuit,
                                                const std::optional<HeatPoint>& point);

}  // namespace heatmatch
