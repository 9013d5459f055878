#pragma once

#include <optional>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// Whether steam, or water that expands, has a way out of the store: of water or a damp fill that
/// reaches 90 °C with nothing taken out and the thermostat welded a closed one bursts.
/// @cite common-practice
[[nodiscard]] Margin pressure_margin(const Circuit& circuit, const std::optional<HeatPoint>& point);

}  // namespace heatmatch
