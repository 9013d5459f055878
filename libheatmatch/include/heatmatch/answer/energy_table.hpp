#pragma once

#include "heatmatch/answer/table.hpp"
#include "heatmatch/operation/days/day.hpp"

namespace heatmatch {

/// Energy balance of a run, for all days and per day; the title names the circuit and the number of
/// days.
[[nodiscard]] Table energy_table(const DayRun& run);
/// Title on a page of so many days of the darkest month.
[[nodiscard]] Sentence dark_days_title(int days);

}  // namespace heatmatch
