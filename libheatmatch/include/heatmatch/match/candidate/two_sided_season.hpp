#pragma once

#include <span>

#include "heatmatch/match/candidate/season.hpp"
#include "heatmatch/solar/weather.hpp"

namespace heatmatch {

/// Adds the season as a panel has it that takes light on its back, unless it is there or the panel
/// takes none: the light on the backs at its typical share, and its ends for the band.
void add_two_sided(SeasonWeather& season, const Weather& weather, std::span<const int> months,
                   bool exact, const PanelInService& panel);

}  // namespace heatmatch
