#pragma once

#include <span>

#include "heatmatch/match/candidate/season.hpp"
#include "heatmatch/solar/weather.hpp"

namespace heatmatch {

/// Adds the season with rear light for a bifacial panel, if it is missing; no effect for other
/// panels. Rear light counts at its typical share, and at both ends for the band.
void add_two_sided(SeasonWeather& season, const Weather& weather, std::span<const int> months,
                   bool exact, const PanelInService& panel);

}  // namespace heatmatch
