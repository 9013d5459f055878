#pragma once

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/rank/rank.hpp"

namespace heatmatch {

/// Below the wires of a row of a ranking: how many pairings are left out because a wire would not
/// withstand them, and what the first of those, by heat, would do to it.
[[nodiscard]] Sentences spared_wires(const Ranking& ranking);

}  // namespace heatmatch
