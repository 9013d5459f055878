#pragma once

#include "heatmatch/base/trace.hpp"
#include "heatmatch/match/candidate/candidate.hpp"

namespace heatmatch {

/// Every formula behind a candidate with its numbers put in, down to the nameplate values and
/// their sources.
[[nodiscard]] Trace explain(const Candidate& candidate);

}  // namespace heatmatch
