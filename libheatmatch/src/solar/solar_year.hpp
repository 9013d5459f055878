#pragma once

#include "site_plane.hpp"

#include <vector>

namespace heatmatch {

/// The middle of an hour of a common year, by the mean solar time of the place.
struct YearHour {
    SkyMoment moment{};
    double unix_time_s = 0.0;
    double solar_hour = 0.0;       //!< 0.5 to 23.5
    std::size_t day_of_month = 0;  //!< 0 to 30
};

/// The plane of a site for a year by solar time, which does not depend on longitude: a missing
/// longitude is 0.
[[nodiscard]] SitePlane plane_by_the_sun(Site site);

/// The middle of one of those hours, all counted from 0.
[[nodiscard]] SkyMoment moment_of_year(const SitePlane& site, std::size_t month,
                                       std::size_t day_of_month, std::size_t hour);

/// All 8760 hours, January first.
[[nodiscard]] std::vector<YearHour> solar_year(const SitePlane& site);

/// Air temperature between the mean low and high of the month [°C]: the low near sunrise, the high
/// in the afternoon. @cite campbell-norman-1998
[[nodiscard]] double air_at_hour(const MonthlyNormals& normals, const YearHour& hour);

/// Lists the wind as assumed.
[[nodiscard]] Assumption still_wind_assumption();

}  // namespace heatmatch
