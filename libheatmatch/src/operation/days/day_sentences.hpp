#pragma once

#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/operation/days/day_answer.hpp"

namespace heatmatch {

/// What an answer says, the verdict first.
[[nodiscard]] Sentences day_sentences(const DayAnswer& answer, const Candidate& candidate,
                                      const DayRun& run, UnitSystem system);

}  // namespace heatmatch
