#pragma once

#include <optional>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// Whether the liquid of a store always covers its elements: what stands in air above it passes the
/// limit of its sheath within minutes. Nothing to ask where there is no liquid.
/// @cite common-practice
[[nodiscard]] Margin covered_margin(const Circuit& circuit);

}  // namespace heatmatch
