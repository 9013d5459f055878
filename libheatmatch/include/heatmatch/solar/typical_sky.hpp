#pragma once

#include <optional>

#include "heatmatch/setting/site.hpp"

namespace heatmatch {

/// Latitude to which the relation of the sun holds; no typical sky is given beyond [deg].
inline constexpr double typical_sky_latitude_deg = 60.0;
/// Share by which the sun of a real place commonly differs from that of typical_months().
inline constexpr double typical_sky_band = 0.35;
/// The same for the monthly means of the air [K].
inline constexpr double typical_air_band_k = 8.0;

/// Twelve months of a latitude, for a place without a table of its own: a wide guess.
/// Sun: `H/H0 = 0.29 cos(latitude) + 0.52 n/N`, with a share n/N of bright sunshine of 0.45 over
/// the year, 0.15 less in midwinter and more in midsummer from 45° on, and less under a noon sun
/// below 15°; then on the plane of the panels. Air: the mean of the latitude
/// `14.9 - 28.4 P2(sin latitude)` °C, warmest a month after the longest day; coldest by 0.3 K a
/// degree of latitude (0.15 in the south), or, where the record
/// low is known, 20 K above it at night; 10 K between night and day. The shares of sunshine and the
/// numbers of the air are from memory. @cite glover-mcculloch-1958 @cite north-1975
/// @cite duffie-beckman
/// The site needs a latitude; unstated, its plane is flat and faces the equator. Empty without a
/// latitude, or beyond typical_sky_latitude_deg.
[[nodiscard]] std::optional<MonthlyNormals> typical_months(const Site& site,
                                                           std::optional<double> record_low_c);

}  // namespace heatmatch
