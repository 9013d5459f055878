#pragma once

#include <optional>
#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/circuit/opening.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// Whether vessel, liner and lagging withstand the temperature of their hot side. That counts as
/// the hottest spot where the fill meets them, or as the whole of a liquid. Assessed after a
/// stagnation: a danger, or a warning where a limit stops it in time; in normal use a danger with a
/// limit too. Headroom never grows with power: 0 where only a limit keeps the layer below its
/// limit. A material that is not stated is not assessed. @cite insulation-limits-table @cite
/// nia-insulation-guide
[[nodiscard]] std::vector<Margin> material_margins(const Circuit& circuit,
                                                   const std::optional<HeatPoint>& point,
                                                   const OpeningSite& site = {});

/// Whether a stated material of vessel, liner or lagging has a limit below that temperature.
[[nodiscard]] bool passes_material(const Store& store, double inner_c);

}  // namespace heatmatch
