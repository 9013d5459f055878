#pragma once

#include <optional>
#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/circuit/opening.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// What vessel, liner and lagging stand on their hot side, which counts as hot as the hottest spot
/// of the fill's face; a liquid is as hot there as all of it. Judged after a stagnation: that is a
/// danger, or a warning where a limit stops it in time; use alone is a danger with a limit too.
/// Headroom never grows with the watts: 0 where a limit alone keeps the layer whole. A material
/// that nobody told is not assessed. @cite insulation-limits-table @cite nia-insulation-guide
[[nodiscard]] std::vector<Margin> material_margins(const Circuit& circuit,
                                                   const std::optional<HeatPoint>& point,
                                                   const OpeningSite& site = {});

/// Whether vessel, liner or lagging is told to be of something that stands less than that.
[[nodiscard]] bool passes_material(const Store& store, double inner_c);

}  // namespace heatmatch
