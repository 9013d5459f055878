#pragma once

#include <optional>

#include "heatmatch/setting/site.hpp"
#include "heatmatch/solar/weather.hpp"

namespace heatmatch {

/// A year of cloudless hours in the clear sky of Ineichen and Perez: an upper bound for the place.
/// Air between the monthly lows and highs, or at 10 °C; wind as for NOCT. @cite ineichen-perez-2002
[[nodiscard]] Weather clear_days(const Site& site,
                                 const std::optional<MonthlyNormals>& normals = std::nullopt);

}  // namespace heatmatch
