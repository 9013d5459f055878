#pragma once

#include "heatmatch/answer/table.hpp"
#include "heatmatch/operation/days/day.hpp"

namespace heatmatch {

/// Where the energy of a run came from and went, of all days and of a day; its title is what lived
/// through how many days.
[[nodiscard]] Table energy_table(const DayRun& run);
/// Its title on a page of so many days of the darkest month.
[[nodiscard]] Sentence dark_days_title(int days);

}  // namespace heatmatch
