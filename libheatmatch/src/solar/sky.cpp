#include "heatmatch/solar/sky.hpp"

#include "kept_sky.hpp"
#include "sentences.hpp"

#include <cmath>
#include <string>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/error.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

using solar_sentences::say;

namespace {

Weather weather_of_sky(const SkyRows& rows, double tilt_deg, double azimuth_deg) {
    Site site = rows.site;
    site.tilt_deg = tilt_deg;
    site.azimuth_deg = azimuth_deg;
    const SitePlane plane = site_plane(site);
    Weather weather{.step_hours = rows.step_hours,
                    .first_hour = rows.first_hour,
                    .remarks = rows.remarks,
                    .assumed = plane.assumed};
    weather.assumed.insert(weather.assumed.end(), rows.assumed.begin(), rows.assumed.end());
    for (std::size_t row = 0; row < rows.size(); ++row) {
        append_row(weather, plane, sky_moment(plane, rows.unix_time_s[row]),
                   {.ghi_w_m2 = rows.ghi_w_m2[row],
                    .dni_w_m2 = rows.dni_w_m2[row],
                    .dhi_w_m2 = rows.dhi_w_m2[row]},
                   {.air_c = rows.air_c[row], .wind_factor = rows.wind_factor[row]},
                   rows.hours[row]);
        const double sun_w_m2 = weather.irradiance_w_m2.back();
        if (sun_w_m2 <= brightest_plane_w_m2) continue;
        throw InvalidInput(ErrorDetail{
            .part = "weather",
            .field = "sun on a plane of " + format_number(tilt_deg) + " deg tilt and " +
                     format_number(azimuth_deg) + " deg azimuth in row " + std::to_string(row),
            .value = format_number(sun_w_m2) + " W/m2",
            .allowed = "<= " + format_number(brightest_plane_w_m2) + " W/m2",
            .remedy = say<"solar.check_plane">()});
    }
    weather.days = rows.days;
    return weather;
}

}  // namespace

std::size_t SkyRows::hour_of_day(std::size_t row) const {
    constexpr double second_per_degree = 240.0;
    const double solar_s = unix_time_s[row] + site.longitude_deg.value_or(0.0) * second_per_degree;
    const double of_day = solar_s - std::floor(solar_s / seconds_of_day) * seconds_of_day;
    return static_cast<std::size_t>(of_day / 3600.0) % 24;
}

std::shared_ptr<const Weather> Sky::on_plane(double tilt_deg, double azimuth_deg) const {
    const std::scoped_lock lock(guard_);
    auto& known = planes_[{tilt_deg, azimuth_deg}];
    if (!known) {
        try {
            known = std::make_shared<const Weather>(weather_of_sky(rows_, tilt_deg, azimuth_deg));
        } catch (...) {
            planes_.erase({tilt_deg, azimuth_deg});
            throw;
        }
    }
    return known;
}

Weather on_plane(const Weather& weather, double tilt_deg, double azimuth_deg) {
    const auto& sky = weather.sky.made_from;
    if (!sky) {
        throw InvalidInput(ErrorDetail{
            .part = "weather",
            .field = "tilt_deg, azimuth_deg",
            .value = format_number(tilt_deg) + " deg, " + format_number(azimuth_deg) + " deg",
            .allowed = "the plane whose sun was given",
            .remedy = say<"solar.need_sky">()});
    }
    Weather other = *sky->on_plane(tilt_deg, azimuth_deg);
    other.sky = weather.sky;
    return other;
}

void append_sky(SkyRows& rows, double unix_time_s, const SkyIrradiance& sky, const PanelAir& air,
                double hours) {
    rows.unix_time_s.push_back(unix_time_s);
    rows.ghi_w_m2.push_back(sky.ghi_w_m2);
    rows.dni_w_m2.push_back(sky.dni_w_m2);
    rows.dhi_w_m2.push_back(sky.dhi_w_m2);
    rows.air_c.push_back(air.air_c);
    rows.wind_factor.push_back(air.wind_factor);
    rows.hours.push_back(hours);
}

void keep_sky(Weather& weather, SkyRows rows, std::size_t assumed_of_plane) {
    rows.days = weather.days;
    rows.step_hours = weather.step_hours;
    rows.first_hour = weather.first_hour;
    rows.remarks = weather.remarks;
    rows.assumed.assign(weather.assumed.begin() + static_cast<std::ptrdiff_t>(assumed_of_plane),
                        weather.assumed.end());
    if (!rows.site.longitude_deg) rows.site.longitude_deg = 0.0;
    weather.sky.made_from = std::make_shared<const Sky>(std::move(rows));
}

}  // namespace heatmatch
