#pragma once

#include <optional>

#include "heatmatch/setting/site.hpp"

namespace heatmatch {

/// Latitude to which the relation of the sun holds; no typical sky is given beyond [deg].
inline constexpr double typical_sky_latitude_deg = 60.0;
/// Share by which the sun of a real place commonly differs from that of typical_months().
inline constexpr double typical_sky_band = 0.35;
/// The same for the monthly means of the air [K].
inline constexpr double typical_air_band_k = 10.0;
/// The same where the record low is not known.
inline constexpr double typical_air_band_without_low_k = 18.0;

/// Twelve months of a latitude, for a place without a table of its own: a wide guess.
/// Sun: `H/H0 = 0.29 cos(latitude) + 0.52 n/N`, with a share n/N of bright sunshine of 0.45 over
/// the year, 0.15 less in midwinter and more in midsummer from 45° on, and less under a noon sun
/// below 15°; then on the plane of the panels. Air: warmest month `29 - 16 sin2(latitude)` °C, a
/// month after the longest day, by 10 K warmer at day than at night. Coldest month
/// `26 - 46 sin2(latitude)` °C, by 7 K; where the record low is known, its nights instead are at
/// `10 + 0.58 low` °C. The record low does not lower the summer. The shares of sunshine are from
/// memory; the numbers of the air are fitted to normals of land below 500 m, from memory, and
/// typical years of three other stations lie within the bands.
/// @cite glover-mcculloch-1958 @cite duffie-beckman
/// The site needs a latitude; unstated, its plane is flat and faces the equator. Empty without a
/// latitude, or beyond typical_sky_latitude_deg.
[[nodiscard]] std::optional<MonthlyNormals> typical_months(const Site& site,
                                                           std::optional<double> record_low_c);

}  // namespace heatmatch
