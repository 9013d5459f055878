#pragma once

#include "heatmatch/base/sentence.hpp"

namespace heatmatch {

/// What every report of a circuit must show, one sentence each. Common practice; local codes
/// decide. `in_liquid` for a store of water or another liquid, else for one of grains or stone.
[[nodiscard]] Sentences cautions(bool in_liquid = false);

}  // namespace heatmatch
