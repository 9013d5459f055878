#pragma once

#include "heatmatch/match/candidate/candidate.hpp"
#include "heatmatch/match/candidate/rank_options.hpp"

namespace heatmatch {

/// Assesses the existing circuit (`installation.circuit`) as a candidate, whatever its margins.
/// Throws InvalidInput if the installation describes none, or more panels than are owned.
[[nodiscard]] Candidate assess(const Parts& parts, const Installation& installation,
                               const RankOptions& options = {});

}  // namespace heatmatch
