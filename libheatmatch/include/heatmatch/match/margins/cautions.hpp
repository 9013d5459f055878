#pragma once

#include "heatmatch/base/sentence.hpp"

namespace heatmatch {

/// What every report of a circuit must show, one sentence each. Common practice; local codes
/// decide.
[[nodiscard]] Sentences cautions();

}  // namespace heatmatch
