#pragma once

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/candidate/candidate.hpp"

namespace heatmatch {

/// How much heat, and what that is like.
[[nodiscard]] Sentence heat_sentence(const Candidate& candidate);
/// What the heat does for the space, by what the space loses.
[[nodiscard]] Sentence space_sentence(const Candidate& candidate);
/// What its margins come to; a danger is named.
[[nodiscard]] Sentence margin_sentence(const Candidate& candidate);
/// Which limit whose passing is a danger is nearest, how near, and whether one is missing; empty
/// where there is nothing to say.
[[nodiscard]] Sentence nearest_sentence(const Candidate& candidate);

/// What stands before the answer of a week of the darkest month, lived through.
[[nodiscard]] Sentence lived_week_sentence(const Season& season);

/// What a candidate comes to; a danger first.
[[nodiscard]] Sentences verdict(const Candidate& candidate);

}  // namespace heatmatch
