#pragma once

#include <span>

#include "heatmatch/answer/table.hpp"
#include "heatmatch/operation/days/day_answer.hpp"

namespace heatmatch {

/// The highest that every part reached in a run against its limit, and when.
[[nodiscard]] Table peaks_table(const DayRun& run, std::span<const PartPeak> peaks);
/// Its title on a page of a week, and on one of a stagnation.
[[nodiscard]] Sentence peaks_in_days_title();
[[nodiscard]] Sentence stagnation_title();
/// What stands before a stagnation that follows a run.
[[nodiscard]] Sentence welded_shut_title();

}  // namespace heatmatch
