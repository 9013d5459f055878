#pragma once

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/candidate/candidate.hpp"

namespace heatmatch {

/// Heat per day, with a comparison.
[[nodiscard]] Sentence heat_sentence(const Candidate& candidate);
/// Effect of the heat on the space, from the heat loss of the space.
[[nodiscard]] Sentence space_sentence(const Candidate& candidate);
/// Summary of the margins; a danger is named.
[[nodiscard]] Sentence margin_sentence(const Candidate& candidate);
/// Nearest limit whose exceedance is a danger, its headroom, and whether one is not assessed; empty
/// where there is none.
[[nodiscard]] Sentence nearest_sentence(const Candidate& candidate);

/// Heading of the simulated week of the darkest month.
[[nodiscard]] Sentence lived_week_sentence(const Season& season);

/// Verdict on a candidate; dangers come first.
[[nodiscard]] Sentences verdict(const Candidate& candidate);

}  // namespace heatmatch
