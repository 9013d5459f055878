#pragma once

// Docstrings of register_sun.cpp.
namespace heatmatch::python::docs {

inline constexpr const char* sun_position = R"(Compute the position of the sun.

Parameters
----------
latitude_deg : float
    Latitude, north positive [deg], -90 to 90.
longitude_deg : float
    Longitude, east positive [deg], -180 to 180.
elevation_m : float
    Height above sea level [m], -450 to 9000.
times_utc : pandas.DatetimeIndex, numpy.ndarray or float
    Moments, any shape: an index with a time zone, ``datetime64`` in UTC, or seconds since
    1970-01-01 00:00 UTC. Years 1950 to 2100.

Returns
-------
SunPositions
    Arrays of the shape of `times_utc`: zenith angle without and with refraction [deg], azimuth
    clockwise from north [deg], irradiance outside the atmosphere [W/m2].

Raises
------
InvalidInput
    A number is out of range, or a time cannot be read.

Notes
-----
Low-accuracy series of Meeus, chapter 25, with nutation in the sidereal time and parallax. Within
0.012 deg of a full solution from 1950 to 2100. Refraction holds for the standard pressure at
`elevation_m` and 12 °C.

References
----------
meeus-1998 : position of the sun
spencer-1971 : irradiance outside the atmosphere

Examples
--------
>>> import numpy as np
>>> import heatmatch as hm
>>> noon = np.array(["2026-06-21T17:00"], dtype="datetime64[s]")
>>> sun = hm.sun_position(44.0, -73.0, 100.0, noon)
>>> print(f"{sun.zenith_deg[0]:.1f} deg")
20.6 deg)";

inline constexpr const char* clear_sky = R"(Compute the irradiance of a cloudless sky.

Parameters
----------
apparent_zenith_deg : float or array_like
    Zenith angle of the sun with refraction [deg], 0 to 180, any shape.
model : str
    "ineichen" for all three irradiances, or "haurwitz" for the global irradiance only.
elevation_m : float
    Height above sea level [m], -450 to 9000. Haurwitz ignores it.
linke_turbidity : float
    Linke turbidity [dimensionless], 1 to 15: 2 clean and cold, 3 usual, 5 and more humid or dusty.
    Haurwitz ignores it.
extraterrestrial_w_m2 : float or array_like
    Irradiance normal to the sun outside the atmosphere [W/m2], 1300 to 1450. Broadcast against
    `apparent_zenith_deg`; Haurwitz ignores it.

Returns
-------
SkyIrradiance or SkyIrradiances
    Global, direct normal and diffuse irradiance [W/m2]: numbers for numbers, arrays for arrays. All
    are 0 with the sun below the horizon. Haurwitz: direct and diffuse are nan.

Raises
------
InvalidInput
    A number is out of range, shapes do not broadcast, or `model` is unknown.

Notes
-----
Ineichen and Perez, with ``I0`` the irradiance outside the atmosphere, ``z`` the zenith angle, ``h``
the height [m], ``TL`` the Linke turbidity and ``AM`` the air mass at the standard pressure of the
height::

    GHI = cg1 I0 cos(z) exp(-cg2 AM (fh1 + fh2 (TL - 1)))
    fh1 = exp(-h/8000), fh2 = exp(-h/1250)
    cg1 = 5.09e-5 h + 0.868, cg2 = 3.92e-5 h + 0.0387
    DNI <= I0 (0.664 + 0.163/fh1) exp(-0.09 AM (TL - 1))

The brightening at large air masses, added by a later paper, is left out.
Haurwitz: ``GHI = 1098 cos(z) exp(-0.059 / cos(z))``.

References
----------
ineichen-perez-2002 : clear sky with height and turbidity
kasten-young-1989 : air mass
haurwitz-1945 : clear sky from the zenith angle alone

Examples
--------
>>> import heatmatch as hm
>>> sky = hm.clear_sky(30.0, linke_turbidity=3.0)
>>> print(f"{sky.ghi_w_m2:.0f} W/m2 global, {sky.dhi_w_m2:.0f} W/m2 diffuse")
898 W/m2 global, 103 W/m2 diffuse)";

inline constexpr const char* erbs_split =
    R"(Split global irradiance into direct and diffuse irradiance.

Parameters
----------
ghi_w_m2 : float or array_like
    Hourly mean of global horizontal irradiance [W/m2], -100 to 3000, any shape. Negative
    values count as 0.
zenith_deg : float or array_like
    Zenith angle of the sun without refraction [deg], 0 to 180. Broadcast against `ghi_w_m2`.
extraterrestrial_w_m2 : float or array_like
    Irradiance normal to the sun outside the atmosphere [W/m2], 1300 to 1450. Broadcast likewise.

Returns
-------
SkyIrradiance or SkyIrradiances
    Global, direct normal and diffuse irradiance [W/m2]: numbers for numbers, arrays for arrays.

Raises
------
InvalidInput
    A number is out of range, or shapes do not broadcast.

Notes
-----
The diffuse share follows from the clearness index ``kt = GHI / (I0 cos z)``: ``1 - 0.09 kt`` up to
0.22, 0.165 above 0.8, and between them
``0.9511 - 0.1604 kt + 4.388 kt^2 - 16.638 kt^3 + 12.336 kt^4``. All of it counts as diffuse with
the sun lower than 3 deg above the horizon. Fitted to hourly means.

References
----------
erbs-1982 : diffuse share by clearness index

Examples
--------
>>> import heatmatch as hm
>>> sky = hm.erbs_split(600.0, 40.0, 1366.1)
>>> print(f"{sky.dni_w_m2:.0f} W/m2 direct, {sky.dhi_w_m2:.0f} W/m2 diffuse")
393 W/m2 direct, 299 W/m2 diffuse)";

}  // namespace heatmatch::python::docs
