#pragma once

#include <span>

#include "heatmatch/answer/table.hpp"
#include "heatmatch/match/candidate/candidate.hpp"

namespace heatmatch {

/// Jobs at these circuits that are licensed or live work, one row each: the job, its hold point,
/// who does it, and room to sign. They are named without steps. Pressurized water is left out only
/// where every store is known to hold none.
[[nodiscard]] Table hold_points_table(std::span<const Candidate* const> circuits);

}  // namespace heatmatch
