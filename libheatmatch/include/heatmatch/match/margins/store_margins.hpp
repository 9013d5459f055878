#pragma once

#include <optional>
#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/circuit/opening.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// Wall or lid beside which wood is a caution at least, below its limit [°C].
/// @cite babrauskas-2007
inline constexpr double wood_near_c = 65.0;

/// Margins of the store itself: the fill's ceiling and moisture, wall, lid and floor against wood
/// and touch, pressure, what it is made of, and whether a liquid covers the element. Walls are
/// judged at the fill's high conductivity. What is not known is not assessed.
[[nodiscard]] std::vector<Margin> store_margins(const Circuit& circuit,
                                                const std::optional<HeatPoint>& point,
                                                const OpeningSite& site = {});

}  // namespace heatmatch
