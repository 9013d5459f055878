#pragma once

#include "heatmatch/answer/table.hpp"
#include "heatmatch/operation/days/day_answer.hpp"

namespace heatmatch {

/// Energies of a day and what happens in the dark, a row for each month, and for all days where
/// there are several.
[[nodiscard]] Table months_table(const DayAnswer& answer);
/// Its title on a page of a week.
[[nodiscard]] Sentence nights_title();

}  // namespace heatmatch
