#pragma once

#include "heatmatch/setting/site.hpp"
#include "heatmatch/solar/weather.hpp"

namespace heatmatch {

/// A year of hours from twelve monthly means. `sun_hours` is the mean daily sum on the plane before
/// its glass [kWh/m2]; each month's mean clearness is found so that its hours sum to it. Within the
/// day the clearness follows Collares-Pereira and Rabl, among the days it is spread after Hollands
/// and Huget, each hour at its own mean, in a fixed order; direct and diffuse by Erbs, the air
/// between low and high, wind as for NOCT. Hours of a month that is clouded by the clock (fog in
/// the morning) are not known to it. Throws InvalidInput naming the month and the largest possible
/// value where no sky gives that much.
/// @cite collares-pereira-rabl-1979 @cite hollands-huget-1983 @cite erbs-1982
[[nodiscard]] Weather weather_from_months(const MonthlyNormals& normals, const Site& site);

}  // namespace heatmatch
