#pragma once

#include "heatmatch/answer/table.hpp"
#include "heatmatch/operation/days/day_answer.hpp"

namespace heatmatch {

/// Energy per day and conditions at night, one row for each month, and one for all days where there
/// are several months.
[[nodiscard]] Table months_table(const DayAnswer& answer);
/// Title on a page of a week.
[[nodiscard]] Sentence nights_title();

}  // namespace heatmatch
