#pragma once

#include "heatmatch/answer/table.hpp"
#include "heatmatch/match/candidate/candidate.hpp"

namespace heatmatch {

/// Temperatures in the store, one row for each place: low, typical and high by the fill, the value
/// at its worst case, and the limit. No row where they are not known.
[[nodiscard]] Table heat_table(const Candidate& candidate);

}  // namespace heatmatch
