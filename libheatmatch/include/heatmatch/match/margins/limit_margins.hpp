#pragma once

#include <optional>
#include <vector>

#include "heatmatch/match/circuit/opens.hpp"
#include "heatmatch/match/margins/limit_in_time.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// Margins of sensing devices: whether a limit that opens the circuit acts in time, and opens
/// without supply or probe; and whether the device withstands the temperature where it senses.
[[nodiscard]] std::vector<Margin> limit_margins(const Circuit& circuit,
                                                const std::optional<HeatPoint>& point,
                                                const OpeningSite& site = {});

}  // namespace heatmatch
