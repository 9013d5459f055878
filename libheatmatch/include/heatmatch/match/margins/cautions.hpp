#pragma once

#include "heatmatch/base/sentence.hpp"

namespace heatmatch {

/// Cautions for every report of a circuit, one sentence each. Common practice; local codes decide.
/// `in_liquid` for a store of water or another liquid, otherwise for one of grains or stone.
[[nodiscard]] Sentences cautions(bool in_liquid = false);

}  // namespace heatmatch
