#pragma once

// Docstrings of register_monthly_sky.cpp.
namespace heatmatch::python::docs {

inline constexpr const char* monthly_sky =
    R"(Find the hourly skies of a year from twelve monthly means.

Parameters
----------
site : Site
    Place and panels. Needs latitude and tilt; longitude defaults to 0.
sun_hours : array_like
    Mean daily sum of irradiance on the plane of the site, before its glass [kWh/m2], shape (12,),
    January first.
temp_min_c : array_like
    Mean daily minimum of the air temperature [°C], shape (12,).
temp_max_c : array_like
    Mean daily maximum of the air temperature [°C], shape (12,).

Raises
------
InvalidInput
    A list does not have twelve numbers, the site lacks a value, or no sky gives a sum; the message
    states the month and the largest possible value.

Notes
-----
The mean sky index of each month, global irradiance over that of a clear sky, is found so that its
hours sum to the given value. A share of the days is clear; the others are cloudy, each at one index
all day. Clear sky by Ineichen and Perez, diffuse share by Erbs. Not represented: months that are
clouded at certain hours, such as morning fog. Skies are uncertain in months with
little sun on the plane.

References
----------
suehrcke-2000 : share of clear days
bendt-1981 : distribution of daily clearness
ineichen-perez-2002 : clear sky
erbs-1982 : diffuse share)";

inline constexpr const char* monthly_sky_weather =
    R"(Compute a year of hourly weather on panels of a given tilt and azimuth.

Parameters
----------
tilt_deg : float or None
    Tilt [deg], 0 flat to 90 upright; None: that of the site.
azimuth_deg : float or None
    Azimuth that the panels face, clockwise from north [deg], 0 to 360; None: that of the site.

Returns
-------
Weather
    Hours of a year.

Raises
------
InvalidInput
    An angle is out of range.)";

inline constexpr const char* monthly_sky_sun_hours =
    R"(Compute mean daily sums of irradiance on panels of a given tilt and azimuth.

Parameters
----------
tilt_deg : float or None
    Tilt [deg], 0 flat to 90 upright; None: that of the site.
azimuth_deg : float or None
    Azimuth that the panels face, clockwise from north [deg], 0 to 360; None: that of the site.

Returns
-------
numpy.ndarray
    Mean daily sum before the glass, by month [kWh/m2], shape (12,), January first.

Raises
------
InvalidInput
    An angle is out of range.)";

}  // namespace heatmatch::python::docs
