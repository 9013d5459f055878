#pragma once

#include <optional>
#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/circuit/opening.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// Temperature of wall or lid from which wood beside it is at least a caution, although below its
/// limit [°C]. @cite babrauskas-2007
inline constexpr double wood_near_c = 65.0;

/// Margins of the store: ceiling temperature and moisture of the fill; wall, lid and floor beside
/// wood and for touch; pressure; materials; and whether a liquid covers the element. Walls are
/// assessed at the high conductivity of the fill. Unknown values are not assessed.
[[nodiscard]] std::vector<Margin> store_margins(const Circuit& circuit,
                                                const std::optional<HeatPoint>& point,
                                                const OpeningSite& site = {});

}  // namespace heatmatch
