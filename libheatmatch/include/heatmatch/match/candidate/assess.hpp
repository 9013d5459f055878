#pragma once

#include "heatmatch/match/candidate/candidate.hpp"
#include "heatmatch/match/candidate/rank_options.hpp"

namespace heatmatch {

/// Judges the circuit that stands (`installation.circuit`) as a candidate, whatever its margins.
/// Throws InvalidInput if the installation describes none, or more panels than it owns.
[[nodiscard]] Candidate assess(const Parts& parts, const Installation& installation,
                               const RankOptions& options = {});

}  // namespace heatmatch
