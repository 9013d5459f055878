#pragma once

#include <array>
#include <optional>

#include "heatmatch/setting/site.hpp"

namespace heatmatch {

/// Irradiance on a plane in the middle of each hour of a clear day, the middle day of each month,
/// by mean solar time, before the glass and without dirt [W/m2].
using PlaneDays = std::array<std::array<double, 24>, 12>;

/// Those days for the plane of a site, in the clear sky of Ineichen and Perez; empty where its
/// latitude, tilt or azimuth is not stated: its sun at an hour is then not known. Throws
/// InvalidInput for a value of the site out of its range. @cite ineichen-perez-2002
[[nodiscard]] std::optional<PlaneDays> plane_days(const Site& site);

}  // namespace heatmatch
