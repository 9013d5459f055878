#pragma once

#include <optional>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// Whether steam or expanding water has a way out of the store. A closed store of water or a damp
/// fill bursts if it reaches 90 °C, with no heat extracted and the thermostat welded. @cite
/// common-practice
[[nodiscard]] Margin pressure_margin(const Circuit& circuit, const std::optional<HeatPoint>& point);

}  // namespace heatmatch
