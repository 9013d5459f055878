#pragma once

namespace heatmatch {

/// A place on the earth.
struct Place {
    double latitude_deg = 0.0;   //!< north positive [deg]
    double longitude_deg = 0.0;  //!< east positive [deg]
    double elevation_m = 0.0;    //!< above sea level [m]
};

/// Position of the sun.
struct SunPosition {
    double zenith_deg = 0.0;           //!< of the centre, without refraction [deg]
    double apparent_zenith_deg = 0.0;  //!< with refraction [deg]
    double azimuth_deg = 0.0;          //!< clockwise from north, 0 to 360 [deg]
    double hour_angle_deg = 0.0;       //!< -180 to 180, 0 at true noon [deg]
    double declination_deg = 0.0;      //!< [deg]
};

/// Air for the refraction of light.
struct Refraction {
    double pressure_pa = 101325.0;
    double air_c = 12.0;
};

/// Pressure of the standard atmosphere at a height [Pa]; -500 to 11000 m.
[[nodiscard]] double standard_pressure_pa(double elevation_m);

/// The sun at a moment, in seconds since 1970-01-01 00:00 UTC: the low-accuracy series of Meeus,
/// chapter 25, with nutation in the sidereal time and parallax. Within 0.012 degrees of a full
/// solution between 1950 and 2100, its refraction included. @cite meeus-1998
[[nodiscard]] SunPosition sun_position(const Place& place, double unix_time_s,
                                       const Refraction& air);

/// The same with the standard pressure of the place and 12 °C.
[[nodiscard]] SunPosition sun_position(const Place& place, double unix_time_s);

/// Irradiance normal to the sun outside the atmosphere [W/m2], by the series of Spencer.
/// @cite spencer-1971
[[nodiscard]] double extraterrestrial_normal_w_m2(double unix_time_s);

/// Day of the year of a moment in UTC, January 1st is 1.
[[nodiscard]] int day_of_year(double unix_time_s);

}  // namespace heatmatch
