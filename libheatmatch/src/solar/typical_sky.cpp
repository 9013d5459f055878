#include "heatmatch/solar/typical_sky.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "heatmatch/solar/monthly_sky.hpp"

namespace heatmatch {

namespace {

/// Day of the year whose sun is the mean of its month. @cite duffie-beckman
constexpr std::array<double, 12> mean_day{17, 47, 75, 105, 135, 162, 198, 228, 258, 288, 318, 344};

double radians(double angle_deg) {
    return angle_deg * std::numbers::pi / 180.0;
}

double declination_deg(double day) {
    return 23.45 * std::sin(2.0 * std::numbers::pi / 365.0 * (284.0 + day));
}

/// Daily sum on a horizontal plane outside the atmosphere [kWh/m2].
double outside_kwh_m2(double latitude_deg, double day) {
    constexpr double solar_constant_kw_m2 = 1.3661;
    const double turn = 2.0 * std::numbers::pi / 365.0;
    const double declination = radians(declination_deg(day));
    const double latitude = radians(latitude_deg);
    const double sunset =
        std::acos(std::clamp(-std::tan(latitude) * std::tan(declination), -1.0, 1.0));
    const double sum = std::cos(latitude) * std::cos(declination) * std::sin(sunset) +
                       sunset * std::sin(latitude) * std::sin(declination);
    return 24.0 / std::numbers::pi * solar_constant_kw_m2 * (1.0 + 0.033 * std::cos(turn * day)) *
           std::max(sum, 0.0);
}

/// -1 in midwinter to 1 in midsummer, of a middle of a month delayed by so many months.
double season(double latitude_deg, std::size_t month, double delay) {
    const double north =
        -std::cos(2.0 * std::numbers::pi * (static_cast<double>(month) + 0.87 - delay) / 12.0);
    return latitude_deg < 0.0 ? -north : north;
}

double typical_clearness(double latitude_deg, std::size_t month) {
    constexpr double all_year = 0.45;
    constexpr double winter = 0.15;
    constexpr double full_season_deg = 45.0;
    const double away = std::fabs(latitude_deg);
    const double bright = all_year + winter * std::min(away / full_season_deg, 1.0) *
                                         season(latitude_deg, month, 0.0);
    // A noon sun as low as that shines through much more air than the relation covers.
    constexpr double low_noon_deg = 15.0;
    const double noon_deg = 90.0 - std::fabs(latitude_deg - declination_deg(mean_day[month]));
    return std::min(noon_deg / low_noon_deg, 1.0) *
           (0.29 * std::cos(radians(away)) + 0.52 * bright);
}

double tenth(double value) {
    return std::round(10.0 * value) / 10.0;
}

void add_air(MonthlyNormals& normals, double latitude_deg, std::optional<double> record_low_c) {
    constexpr double half_day_summer_k = 5.0;
    constexpr double half_day_winter_k = 3.5;
    constexpr double least_swing_k = 3.0;
    const double sine = std::sin(radians(latitude_deg));
    double warmest_c = 29.0 - 16.0 * sine * sine;
    double coldest_c = 26.0 - 46.0 * sine * sine;
    if (record_low_c) {
        // The record low belongs to winter alone: summers of equal latitude differ far less.
        const double night_c = std::max(10.0 + 0.58 * *record_low_c, *record_low_c + 1.0);
        coldest_c = night_c + half_day_winter_k;
        warmest_c = std::max(warmest_c, coldest_c + least_swing_k);
    }
    for (std::size_t month = 0; month < 12; ++month) {
        const double summer = (1.0 + season(latitude_deg, month, 1.0)) / 2.0;
        const double mean_c = std::lerp(coldest_c, warmest_c, summer);
        const double half_day_k = std::lerp(half_day_winter_k, half_day_summer_k, summer);
        normals.temp_min_c.push_back(tenth(mean_c - half_day_k));
        normals.temp_max_c.push_back(tenth(mean_c + half_day_k));
    }
}

}  // namespace

std::optional<MonthlyNormals> typical_months(const Site& site, std::optional<double> record_low_c) {
    if (!site.latitude_deg || std::fabs(*site.latitude_deg) > typical_sky_latitude_deg) return {};
    const double latitude_deg = *site.latitude_deg;
    MonthlyNormals flat;
    for (std::size_t month = 0; month < 12; ++month) {
        flat.sun_hours.push_back(typical_clearness(latitude_deg, month) *
                                 outside_kwh_m2(latitude_deg, mean_day[month]));
    }
    add_air(flat, latitude_deg, record_low_c);
    const Site level{.latitude_deg = site.latitude_deg,
                     .longitude_deg = site.longitude_deg,
                     .tilt_deg = 0.0,
                     .azimuth_deg = latitude_deg < 0.0 ? 0.0 : 180.0,
                     .record_low_c = site.record_low_c};
    MonthlyNormals months = flat;
    months.sun_hours =
        MonthlySky(flat, level).sun_hours(site.tilt_deg.value_or(0.0), site.azimuth_deg);
    // Rounded down, so that a sky with that sum exists.
    for (double& sum : months.sun_hours) sum = std::floor(100.0 * sum) / 100.0;
    return months;
}

}  // namespace heatmatch
