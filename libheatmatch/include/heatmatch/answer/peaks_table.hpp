#pragma once

#include <span>

#include "heatmatch/answer/table.hpp"
#include "heatmatch/operation/days/day_answer.hpp"

namespace heatmatch {

/// Highest temperature of every part in a run, beside its limit and time.
[[nodiscard]] Table peaks_table(const DayRun& run, std::span<const PartPeak> peaks);
/// Title on a page of a week, and on a page of a stagnation.
[[nodiscard]] Sentence peaks_in_days_title();
[[nodiscard]] Sentence stagnation_title();
/// Heading of a stagnation that follows a run.
[[nodiscard]] Sentence welded_shut_title();

}  // namespace heatmatch
