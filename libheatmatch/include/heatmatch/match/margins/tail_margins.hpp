#pragma once

#include <optional>
#include <vector>

#include "heatmatch/match/circuit/tail_heat.hpp"
#include "heatmatch/match/margins/limits.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// Margins where the wire meets the element, at the largest power of the elements: terminal, end
/// seal, and insulation, plating and joint of the wire there. Heat is conducted along the cold end
/// of the element. Unknown values are not assessed; without a store the terminal is assessed by the
/// stated surroundings of its wire.
[[nodiscard]] std::vector<Margin> tail_margins(const Circuit& circuit, const Site& site,
                                               const Extremes& extremes,
                                               const std::optional<HeatPoint>& point);

/// Temperatures from which those margins are computed; empty where they are not known. Of an unlike
/// bank those of the element with the hottest terminal.
[[nodiscard]] std::optional<TailTemperatures> tail_of(const Circuit& circuit,
                                                      const Extremes& extremes,
                                                      const std::optional<HeatPoint>& point);

}  // namespace heatmatch
