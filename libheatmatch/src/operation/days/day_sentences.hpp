#pragma once

#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/operation/days/day_answer.hpp"

namespace heatmatch {

/// What an answer says, the verdict first.
[[nodiscard]] Sentences day_sentences(const DayAnswer& answer, const Candidate& candidate,
                                      const DayRun& run);

/// Of the highest of every part, those that are a warning or a danger.
void tell_peaks(Sentences& sentences, const std::vector<PartPeak>& peaks);

}  // namespace heatmatch
