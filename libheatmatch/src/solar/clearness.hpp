#pragma once

#include "site_plane.hpp"

namespace heatmatch {

/// Hourly clearness over its largest value: density (1 - x) exp(mu x) on 0 to 1, with the mean
/// given. Returns the value that a share of the hours stays below. The mean is held between 0.002
/// and 0.995. @cite hollands-huget-1983
[[nodiscard]] double clearness_quantile(double mean, double share);

/// Largest hourly clearness: the 0.864 of Hollands and Huget for a sun overhead, falling with the
/// air mass as the clean, dry sky (turbidity 1) of Ineichen and Perez does.
/// @cite hollands-huget-1983 @cite ineichen-perez-2002
[[nodiscard]] double largest_clearness(const SitePlane& site, const SkyMoment& moment);

/// Hour's mean clearness over that of its day; 1 on the average over the day's light.
/// @cite collares-pereira-rabl-1979
[[nodiscard]] double hour_over_day(const SitePlane& site, const SkyMoment& moment);

}  // namespace heatmatch
