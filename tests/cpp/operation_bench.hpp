#pragma once

#include "demo.hpp"

#include <algorithm>
#include <vector>

#include "heatmatch/match/candidate/assess.hpp"
#include "heatmatch/operation/days/day.hpp"
#include "heatmatch/solar/monthly_weather.hpp"

/// The demo's existing circuit, in an installation that may have been changed.
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

/// Steady sun of eight hours a day in air of one temperature.
inline heatmatch::DayWeather even_days(int days, double irradiance_w_m2, double air_c) {
    heatmatch::DayWeather weather;
    for (int hour = 0; hour < 24 * days; ++hour) {
        const bool day = hour % 24 >= 8 && hour % 24 < 16;
        weather.irradiance_w_m2.push_back(day ? irradiance_w_m2 : 0.0);
        weather.heating_irradiance_w_m2.push_back(day ? irradiance_w_m2 : 0.0);
        weather.air_c.push_back(air_c);
        weather.bare_share.push_back(1.0);
        weather.month.push_back(1);
    }
    return weather;
}
