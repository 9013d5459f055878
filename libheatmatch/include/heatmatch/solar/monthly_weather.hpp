#pragma once

#include "heatmatch/setting/site.hpp"
#include "heatmatch/solar/weather.hpp"

namespace heatmatch {

/// A year of hours from twelve monthly means on the site's own plane: the weather of their
/// MonthlySky. Throws InvalidInput naming the month and the largest possible value where no sky
/// gives that much.
[[nodiscard]] Weather weather_from_months(const MonthlyNormals& normals, const Site& site);

}  // namespace heatmatch
