#pragma once

#include <optional>
#include <span>

#include "heatmatch/heat/space_balance.hpp"
#include "heatmatch/solar/weather.hpp"

namespace heatmatch {

/// Heat that keeps a space at its target, mean over those months, or over all rows without months:
/// its loss to the colder outside, by day and by night. Sun through its covers and the ground are
/// not counted. Empty without a target or covers, or where the rows do not follow each other with
/// the temperature of the air [kWh].
[[nodiscard]] std::optional<double> needed_kwh_per_day(const SpaceBalance& space,
                                                       const Weather& weather,
                                                       std::span<const int> months);

}  // namespace heatmatch
