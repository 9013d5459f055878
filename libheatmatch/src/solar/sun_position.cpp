#include "heatmatch/solar/sun_position.hpp"

#include "degrees.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>

#include "heatmatch/base/constants.hpp"

namespace heatmatch {

namespace {

constexpr double unix_epoch_j2000_d = -10957.5;  // days from noon of 2000-01-01
// 57 in 1990, 69 in 2020; in one second the sun moves 1e-5 degrees.
constexpr double dynamical_minus_universal_s = 69.0;
constexpr double century_d = 36525.0;

double full_turn(double degrees) {
    const double rest = std::fmod(degrees, 360.0);
    return rest < 0.0 ? rest + 360.0 : rest;
}

struct Equatorial {
    double right_ascension;
    double declination;
    double distance_au;
    double sidereal_deg;  //!< apparent, at Greenwich
};

/// Meeus, chapters 12, 22 and 25.
Equatorial equatorial(double days) {
    const double t = (days + dynamical_minus_universal_s / seconds_of_day) / century_d;
    const double mean_longitude = 280.46646 + t * (36000.76983 + 0.0003032 * t);
    const double anomaly = radians(357.52911 + t * (35999.05029 - 0.0001537 * t));
    const double eccentricity = 0.016708634 - t * (0.000042037 + 0.0000001267 * t);
    const double centre = (1.914602 - t * (0.004817 + 0.000014 * t)) * std::sin(anomaly) +
                          (0.019993 - 0.000101 * t) * std::sin(2.0 * anomaly) +
                          0.000289 * std::sin(3.0 * anomaly);
    const double node = radians(125.04 - 1934.136 * t);
    const double aberration_and_nutation = -0.00569 - 0.00478 * std::sin(node);
    const double longitude = radians(mean_longitude + centre + aberration_and_nutation);
    const double obliquity = radians(23.439291 - 0.0130042 * t + 0.00256 * std::cos(node));
    const double nutation_deg =
        (-17.20 * std::sin(node) - 1.32 * std::sin(2.0 * radians(mean_longitude))) / 3600.0;
    const double ut = days / century_d;
    return {
        .right_ascension =
            std::atan2(std::cos(obliquity) * std::sin(longitude), std::cos(longitude)),
        .declination = std::asin(std::sin(obliquity) * std::sin(longitude)),
        .distance_au = 1.000001018 * (1.0 - eccentricity * eccentricity) /
                       (1.0 + eccentricity * std::cos(anomaly + radians(centre))),
        .sidereal_deg = 280.46061837 + 360.98564736629 * days + 0.000387933 * ut * ut +
                        nutation_deg * std::cos(obliquity),
    };
}

/// Meeus, chapter 16 (Saemundsson), for the pressure and temperature of the air [deg].
double refraction_deg(double elevation_deg, const Refraction& air) {
    // Below, the whole disc has set; the resulting step is below the horizon.
    constexpr double lowest_deg = -0.8333;
    if (elevation_deg < lowest_deg) return 0.0;
    const double bent = 1.02 / std::tan(radians(elevation_deg + 10.3 / (elevation_deg + 5.11)));
    return bent / 60.0 * air.pressure_pa / 101000.0 * 283.0 / (273.0 + air.air_c);
}

}  // namespace

double standard_pressure_pa(double elevation_m) {
    return 100.0 * std::pow((44331.514 - elevation_m) / 11880.516, 1.0 / 0.1902632);
}

SunPosition sun_position(const Place& place, double unix_time_s, const Refraction& air) {
    const double days = unix_time_s / seconds_of_day + unix_epoch_j2000_d;
    const Equatorial sun = equatorial(days);
    const double hour_angle =
        full_turn(sun.sidereal_deg + place.longitude_deg - degrees(sun.right_ascension) + 180.0) -
        180.0;
    const double latitude = radians(place.latitude_deg);
    const double turned = radians(hour_angle);
    const double sine = std::sin(latitude) * std::sin(sun.declination) +
                        std::cos(latitude) * std::cos(sun.declination) * std::cos(turned);
    double elevation_deg = degrees(std::asin(std::clamp(sine, -1.0, 1.0)));
    constexpr double parallax_deg = 8.794 / 3600.0;
    elevation_deg -= parallax_deg / sun.distance_au * std::cos(radians(elevation_deg));
    const double from_south =
        std::atan2(std::sin(turned), std::cos(turned) * std::sin(latitude) -
                                         std::tan(sun.declination) * std::cos(latitude));
    return {.zenith_deg = 90.0 - elevation_deg,
            .apparent_zenith_deg = 90.0 - elevation_deg - refraction_deg(elevation_deg, air),
            .azimuth_deg = full_turn(degrees(from_south) + 180.0),
            .hour_angle_deg = hour_angle,
            .declination_deg = degrees(sun.declination)};
}

SunPosition sun_position(const Place& place, double unix_time_s) {
    return sun_position(place, unix_time_s,
                        {.pressure_pa = standard_pressure_pa(place.elevation_m)});
}

int day_of_year(double unix_time_s) {
    using namespace std::chrono;
    const auto day =
        floor<days>(sys_seconds(seconds(static_cast<long long>(std::floor(unix_time_s)))));
    const year_month_day date(day);
    return static_cast<int>((day - sys_days(date.year() / January / 1)).count()) + 1;
}

double extraterrestrial_normal_w_m2(double unix_time_s) {
    constexpr double solar_constant_w_m2 = 1366.1;  // ASTM E490
    const double b = 2.0 * pi * (day_of_year(unix_time_s) - 1) / 365.0;
    return solar_constant_w_m2 * (1.00011 + 0.034221 * std::cos(b) + 0.00128 * std::sin(b) +
                                  0.000719 * std::cos(2.0 * b) + 7.7e-05 * std::sin(2.0 * b));
}

}  // namespace heatmatch
