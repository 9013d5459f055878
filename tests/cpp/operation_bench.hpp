#pragma once

#include "demo.hpp"

#include <algorithm>
#include <vector>

#include "heatmatch/match/candidate/assess.hpp"
#include "heatmatch/operation/days/day.hpp"
#include "heatmatch/solar/monthly_weather.hpp"

/// The demo's standing circuit, in an installation that may have been changed.
inline heatmatch::Candidate standing(const heatmatch::Installation& installation = demo()) {
    return heatmatch::assess(starter(), installation);
}

/// The demo's own, assessed once.
inline const heatmatch::Candidate& demo_standing() {
    static const heatmatch::Candidate candidate = standing();
    return candidate;
}

/// The demo's year of hours.
inline const heatmatch::Weather& demo_year() {
    static const heatmatch::Weather year =
        heatmatch::weather_from_months(*demo().weather, demo().site);
    return year;
}

/// Three January days of the demo after a first one: quick.
inline heatmatch::DayOptions january_days() {
    return {.span = {.month = 1, .days = 3}, .warm_up_days = 1};
}

inline double highest(const std::vector<double>& list) {
    return *std::max_element(list.begin(), list.end());
}
