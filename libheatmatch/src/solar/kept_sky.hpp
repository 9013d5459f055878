#pragma once

#include "site_plane.hpp"

#include <cstddef>

#include "heatmatch/solar/sky.hpp"

namespace heatmatch {

/// Appends the sky of a row, beside append_row().
void append_sky(SkyRows& rows, double unix_time_s, const SkyIrradiance& sky, const PanelAir& air,
                double hours);

/// Gives a weather the sky that its rows were made from. Its first assumptions are of its plane.
void keep_sky(Weather& weather, SkyRows rows, std::size_t assumed_of_plane);

}  // namespace heatmatch
