#include "heatmatch/solar/observed_weather.hpp"

#include "degrees.hpp"
#include "kept_sky.hpp"
#include "observation_checks.hpp"
#include "sentences.hpp"
#include "solar_year.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/error.hpp"
#include "heatmatch/solar/cell_temperature.hpp"

namespace heatmatch {

using solar_sentences::say;

namespace {

constexpr double lowest_sun_deg = 87.0;  // below, direct irradiance from a difference is noise

double reading(std::span<const double> list, std::size_t row) {
    return std::max(0.0, list[row]);
}

/// Direct irradiance from the remainder of the global [W/m2]; limited to the extraterrestrial.
double direct_from_rest(double rest_w_m2, const SkyMoment& moment) {
    if (moment.sun.apparent_zenith_deg > lowest_sun_deg) return 0.0;
    return std::clamp(rest_w_m2 / moment.cosine(), 0.0, moment.extraterrestrial_w_m2);
}

/// All three components of the sun; missing ones follow from the others.
SkyIrradiance sky_of(const Observations& given, std::size_t row, const SkyMoment& moment) {
    const bool has_direct = !given.dni_w_m2.empty();
    const bool has_diffuse = !given.dhi_w_m2.empty();
    SkyIrradiance sky;
    if (has_direct) sky.dni_w_m2 = moment.is_day() ? reading(given.dni_w_m2, row) : 0.0;
    if (has_diffuse) sky.dhi_w_m2 = reading(given.dhi_w_m2, row);
    if (given.ghi_w_m2.empty()) {
        sky.ghi_w_m2 = sky.dhi_w_m2 + sky.dni_w_m2 * moment.cosine();
        return sky;
    }
    sky.ghi_w_m2 = reading(given.ghi_w_m2, row);
    if (!has_direct && !has_diffuse) {
        sky.dni_w_m2 = std::min(
            erbs_split(sky.ghi_w_m2, moment.sun.zenith_deg, moment.extraterrestrial_w_m2).dni_w_m2,
            moment.extraterrestrial_w_m2);
    } else if (!has_direct) {
        sky.dni_w_m2 = direct_from_rest(sky.ghi_w_m2 - sky.dhi_w_m2, moment);
    }
    if (!has_diffuse) {
        sky.dhi_w_m2 = std::max(0.0, sky.ghi_w_m2 - sky.dni_w_m2 * moment.cosine());
    }
    return sky;
}

/// Counts sunlight while the sun is down.
struct NightLight {
    static constexpr double bright_w_m2 = 50.0;
    std::size_t rows = 0;
    double sum = 0.0;
    double all = 0.0;

    void add(const SkyIrradiance& sky, const SkyMoment& moment) {
        all += sky.ghi_w_m2;
        if (moment.is_day()) return;
        sum += sky.ghi_w_m2;
        if (sky.ghi_w_m2 > bright_w_m2) ++rows;
    }

    void report(Weather& weather) const {
        constexpr double most = 0.1;
        const double share_pct = 100.0 * sum / std::max(all, 1e-9);
        if (sum > most * all) {
            throw InvalidInput(ErrorDetail{
                .part = "weather",
                .field = "unix_time_s",
                .value = format_number(share_pct, 3) + " % of the sunlight while the sun is down",
                .allowed = "at most 10 %",
                .remedy = say<"solar.check_zone">()});
        }
        if (rows == 0) return;
        weather.remarks.push_back(say<"solar.light_at_night">(
            with<"rows">(static_cast<double>(rows), unit::count),
            with<"bright">(bright_w_m2, unit::watt_per_m2), with<"share">(share_pct)));
    }
};

void check_plane(double irradiance_w_m2, std::size_t row, double unix_time_s) {
    if (irradiance_w_m2 <= brightest_plane_w_m2) return;
    throw InvalidInput(ErrorDetail{
        .part = "weather",
        .field = "sun on the panels in row " + std::to_string(row) + " at " + utc_text(unix_time_s),
        .value = format_number(irradiance_w_m2) + " W/m2",
        .allowed = "<= " + format_number(brightest_plane_w_m2) + " W/m2",
        .remedy = say<"solar.check_plane">()});
}

/// Night inside a gap of at most a day has no energy but has elapsed: it counts for the days.
double night_within(const SitePlane& site, Weather& weather, double from_s, double to_s,
                    double step_s) {
    double night_s = 0.0;
    if (to_s - from_s > seconds_of_day) return night_s;
    const auto steps = static_cast<long>(std::ceil((to_s - from_s) / step_s - 0.5));
    for (long k = 0; k < steps; ++k) {
        const double at = from_s + (static_cast<double>(k) + 0.5) * step_s;
        const SkyMoment moment = sky_moment(site, at);
        if (moment.is_day()) continue;
        night_s += step_s;
        weather.days[moment.month] += step_s / seconds_of_day;
    }
    return night_s;
}

/// Mean solar time of the place [h].
double solar_hour(double unix_time_s, double longitude_deg) {
    constexpr double second_per_degree = 240.0;
    const double of_day =
        std::fmod(unix_time_s + longitude_deg * second_per_degree, seconds_of_day);
    return (of_day < 0.0 ? of_day + seconds_of_day : of_day) / 3600.0;
}

Amount hours(double seconds) {
    return {.value = seconds / 3600.0, .unit = unit::hour, .digits = 4};
}

void report_steps(const TimeSteps& steps, double night_s, Weather& weather) {
    if (steps.gaps > 0) {
        const auto gaps = with<"gaps">(static_cast<double>(steps.gaps), unit::count);
        const auto missing = with<"missing">(hours(steps.missing_s - night_s));
        weather.remarks.push_back(night_s > 0.0 ? say<"solar.gaps_and_night">(
                                                      gaps, missing, with<"night">(hours(night_s)))
                                                : say<"solar.gaps">(gaps, missing));
    }
    if (steps.shortened > 0) {
        weather.remarks.push_back(
            say<"solar.shortened">(with<"rows">(static_cast<double>(steps.shortened), unit::count),
                                   with<"step">(hours(steps.step_s))));
    }
}

Assumption lowered_wind(double measured_at_m, double share) {
    return {.part = "weather",
            .field = "wind_m_s",
            .value = say<"solar.lowered_wind">(with<"height">(measured_at_m, unit::metre),
                                               with<"panels">(panel_height_m, unit::metre),
                                               with<"share">(100.0 * share, unit::percent)),
            .source = sentence_of(Name{"fao-56"})};
}

}  // namespace

Weather weather_from_observations(const Observations& given, const Site& site) {
    const SitePlane plane = site_plane(site);
    const std::size_t negative = check_observations(given);
    const TimeSteps steps = time_steps(given);
    const auto times = given.unix_time_s;
    Weather weather{.step_hours = steps.step_s / 3600.0, .assumed = plane.assumed};
    if (steps.gaps == 0 && steps.shortened == 0) {
        weather.first_hour =
            solar_hour(times.front() - given.label * steps.step_s, plane.place.longitude_deg);
    }
    const double wind_share = wind_share_at_panels(given.wind_height_m);
    if (given.wind_m_s.empty()) {
        weather.assumed.push_back(still_wind_assumption());
    } else if (wind_share < 1.0) {
        weather.assumed.push_back(lowered_wind(given.wind_height_m, wind_share));
    }
    if (given.dni_w_m2.empty() && given.dhi_w_m2.empty()) {
        weather.assumed.push_back({.part = "weather",
                                   .field = "dni_w_m2, dhi_w_m2",
                                   .value = say<"solar.split_by_clearness">(),
                                   .source = sentence_of(Name{"erbs-1982"})});
    }
    NightLight at_night;
    SkyRows rows{.site = site};
    double night_s = 0.0;
    for (std::size_t row = 0; row < times.size(); ++row) {
        const bool last = row + 1 == times.size();
        const double next_s = last ? times[row] + steps.step_s : times[row + 1];
        const double length_s = std::min(steps.step_s, next_s - times[row]);
        const double start_s = times[row] - given.label * steps.step_s;
        const double middle_s = start_s + 0.5 * steps.step_s;
        const SkyMoment moment = sky_moment(plane, middle_s);
        const SkyIrradiance sky = sky_of(given, row, moment);
        at_night.add(sky, moment);
        const PanelAir air{.air_c = given.air_c[row],
                           .wind_factor = given.wind_m_s.empty()
                                              ? 1.0
                                              : wind_factor(wind_share * given.wind_m_s[row])};
        append_row(weather, plane, moment, sky, air, length_s / 3600.0);
        append_sky(rows, middle_s, sky, air, length_s / 3600.0);
        check_plane(weather.irradiance_w_m2.back(), row, times[row]);
        if (next_s - times[row] > 1.5 * steps.step_s) {
            night_s += night_within(plane, weather, start_s + steps.step_s,
                                    next_s - given.label * steps.step_s, steps.step_s);
        }
    }
    if (weather.irradiation_kwh_m2() <= 0.0 && at_night.all <= 0.0) {
        throw InvalidInput(
            ErrorDetail{.part = "weather",
                        .field = "ghi_w_m2",
                        .value = "no sun in " + std::to_string(times.size()) + " rows",
                        .allowed = "above 0 W/m2 in some rows",
                        .remedy = say<"solar.check_columns">()});
    }
    at_night.report(weather);
    report_steps(steps, night_s, weather);
    if (negative > 0) {
        weather.remarks.push_back(say<"solar.small_negative">(
            with<"readings">(static_cast<double>(negative), unit::count), with<"nothing">(0.0)));
    }
    keep_sky(weather, std::move(rows), plane.assumed.size());
    return weather;
}

}  // namespace heatmatch
