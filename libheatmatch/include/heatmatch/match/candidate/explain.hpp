#pragma once

#include "heatmatch/base/trace.hpp"
#include "heatmatch/match/candidate/candidate.hpp"

namespace heatmatch {

/// Every formula of a candidate with its numbers, down to the nameplate values and their sources.
[[nodiscard]] Trace explain(const Candidate& candidate);

/// A step with its result: `bank resistance: R x elements in series / branches = 57.1 ohm x 1 / 2 =
/// 28.5501 ohm`, and its source in brackets.
[[nodiscard]] Sentence said(const Step& step);

}  // namespace heatmatch
