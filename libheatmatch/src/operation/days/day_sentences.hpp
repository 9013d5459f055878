#pragma once

#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/operation/days/day_answer.hpp"

namespace heatmatch {

/// Sentences of a result, the verdict first.
[[nodiscard]] Sentences day_sentences(const DayAnswer& answer, const Candidate& candidate,
                                      const DayRun& run);

/// Adds the highest temperatures that are a warning or a danger.
void tell_peaks(Sentences& sentences, const std::vector<PartPeak>& peaks);

}  // namespace heatmatch
