#pragma once

#include <optional>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// Whether the liquid of a store always covers its elements: an element in the air above it exceeds
/// the limit of its sheath within minutes. Not applicable without a liquid. @cite common-practice
[[nodiscard]] Margin covered_margin(const Circuit& circuit);

}  // namespace heatmatch
