#pragma once

#include "demo.hpp"

#include "heatmatch/match/assess.hpp"
#include "heatmatch/operation/day.hpp"
#include "heatmatch/solar/monthly_weather.hpp"

/// The demo's standing circuit, in an installation that may have been changed.
inline heatmatch::Candidate standing(const heatmatch::Installation& installation = demo()) {
    return heatmatch::assess(starter(), installation);
}

/// The demo's year of hours.
inline const heatmatch::Weather& demo_year() {
    static const heatmatch::Weather year =
        heatmatch::weather_from_months(*demo().weather, demo().site);
    return year;
}

/// A January week of the demo.
inline heatmatch::DayOptions january_week() {
    return {.span = {.month = 1, .days = 7}};
}
