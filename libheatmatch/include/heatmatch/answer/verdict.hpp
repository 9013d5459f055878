#pragma once

#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/candidate/candidate.hpp"

namespace heatmatch {

/// Heat per day, with a comparison.
[[nodiscard]] Sentence heat_sentence(const Candidate& candidate);
/// Effect of the heat on the space, from the heat loss of the space.
[[nodiscard]] Sentence space_sentence(const Candidate& candidate);
/// Margins that are no danger as judged, but may be one: at the careful end of an unstated fact,
/// not assessed, or at the worse end of their own band, such as a damp fill once it has dried.
[[nodiscard]] std::vector<const Margin*> possible_dangers(const Candidate& candidate);
/// Summary of the margins; each danger and each possible one is named.
[[nodiscard]] Sentence margin_sentence(const Candidate& candidate);
/// Nearest limit whose exceedance is a danger, its headroom, and whether one is not assessed; empty
/// where there is none.
[[nodiscard]] Sentence nearest_sentence(const Candidate& candidate);

/// Heading of the simulated week of the darkest month.
[[nodiscard]] Sentence lived_week_sentence(const Season& season);

/// Verdict on a candidate; dangers come first.
[[nodiscard]] Sentences verdict(const Candidate& candidate);

}  // namespace heatmatch
