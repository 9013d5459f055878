#pragma once

#include "heatmatch/answer/table.hpp"
#include "heatmatch/match/candidate/candidate.hpp"

namespace heatmatch {

/// How hot a candidate makes its store: low, typical and high by the fill, judged at its worst, and
/// the limit, a row for each place. No row where that is not known.
[[nodiscard]] Table heat_table(const Candidate& candidate);

}  // namespace heatmatch
