#pragma once

#include <optional>
#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// Temperature of every device that senses one, whether it only senses or also conducts the
/// current: a body in full contact with the store, or a probe, against its rating.
[[nodiscard]] std::vector<Margin> sensor_margins(const Circuit& circuit,
                                                 const std::optional<HeatPoint>& point);

}  // namespace heatmatch
