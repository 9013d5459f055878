#pragma once

#include <optional>
#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// Own temperature of everything that senses one, whether it only senses or carries current too:
/// a body that lies with its whole against the store, or a probe, against what it is made for.
[[nodiscard]] std::vector<Margin> sensor_margins(const Circuit& circuit,
                                                 const std::optional<HeatPoint>& point);

}  // namespace heatmatch
