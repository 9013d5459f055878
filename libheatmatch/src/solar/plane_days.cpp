#include "heatmatch/solar/plane_days.hpp"

#include "solar_year.hpp"

namespace heatmatch {

namespace {

constexpr std::size_t middle_day = 14;  // from 0

}  // namespace

std::optional<PlaneDays> plane_days(const Site& site) {
    const bool flat = site.tilt_deg == 0.0;
    if (!site.latitude_deg || !site.tilt_deg || (!site.azimuth_deg && !flat)) return std::nullopt;
    const SitePlane plane = plane_by_the_sun(site);
    PlaneDays days{};
    for (std::size_t month = 0; month < days.size(); ++month) {
        for (std::size_t hour = 0; hour < days[month].size(); ++hour) {
            const SkyMoment moment = moment_of_year(plane, month, middle_day, hour);
            if (!moment.is_day()) continue;
            days[month][hour] =
                light_on_glass(plane, moment, clear_sky_at(plane, moment)).total_w_m2();
        }
    }
    return days;
}

}  // namespace heatmatch
