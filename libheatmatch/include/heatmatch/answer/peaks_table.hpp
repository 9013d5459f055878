#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "heatmatch/answer/table.hpp"
#include "heatmatch/operation/days/day_answer.hpp"

namespace heatmatch {

/// Highest temperature of every part in a run, beside its limit and time.
[[nodiscard]] Table peaks_table(const DayRun& run, std::span<const PartPeak> peaks);
/// The peaks that come first in a short answer, at most so many: danger, warning, caution, not
/// assessed, then the least headroom.
[[nodiscard]] std::vector<PartPeak> worst_peaks(std::span<const PartPeak> peaks, std::size_t most);
/// What a short answer leaves out, by how to see it.
[[nodiscard]] Sentence shortened_days(std::size_t left_out);
/// Title on a page of a week, and on a page of a stagnation.
[[nodiscard]] Sentence peaks_in_days_title();
[[nodiscard]] Sentence stagnation_title();
/// Heading of a stagnation that follows a run.
[[nodiscard]] Sentence welded_shut_title();

}  // namespace heatmatch
