#include "solar_year.hpp"

#include "sentences.hpp"

#include <cmath>

#include "heatmatch/base/constants.hpp"

namespace heatmatch {

using solar_sentences::say;

SitePlane plane_by_the_sun(Site site) {
    if (!site.longitude_deg) site.longitude_deg = 0.0;
    return site_plane(site);
}

namespace {

/// Midnight at the place before January 1st of 2025, a common year [s].
double new_year_s(const SitePlane& site) {
    constexpr double second_per_degree = 240.0;
    return 1735689600.0 - site.place.longitude_deg * second_per_degree;
}

}  // namespace

SkyMoment moment_of_year(const SitePlane& site, std::size_t month, std::size_t day_of_month,
                         std::size_t hour) {
    double days = static_cast<double>(day_of_month);
    for (std::size_t before = 0; before < month; ++before) days += days_of_month[before];
    return sky_moment(site,
                      new_year_s(site) + 3600.0 * (24.0 * days + static_cast<double>(hour) + 0.5));
}

std::vector<YearHour> solar_year(const SitePlane& site) {
    std::vector<YearHour> hours;
    hours.reserve(8760);
    double start_s = new_year_s(site);
    for (const double days : days_of_month) {
        for (std::size_t day = 0; day < static_cast<std::size_t>(days); ++day) {
            for (int hour = 0; hour < 24; ++hour) {
                hours.push_back({.moment = sky_moment(site, start_s + 1800.0),
                                 .unix_time_s = start_s + 1800.0,
                                 .solar_hour = hour + 0.5,
                                 .day_of_month = day});
                start_s += 3600.0;
            }
        }
    }
    return hours;
}

double air_at_hour(const MonthlyNormals& normals, const YearHour& hour) {
    const double turn = hour.solar_hour * pi / 12.0;
    const double share = 0.44 - 0.46 * std::sin(turn + 0.9) + 0.11 * std::sin(2.0 * turn + 0.9);
    const std::size_t month = hour.moment.month;
    return normals.temp_max_c[month] * share + normals.temp_min_c[month] * (1.0 - share);
}

Assumption still_wind_assumption() {
    return {.part = "weather",
            .field = "wind_m_s",
            .value = say<"solar.wind_of_noct">(with<"wind">(1.0, unit::metre_per_second)),
            .source = say<"solar.class_default">()};
}

}  // namespace heatmatch
