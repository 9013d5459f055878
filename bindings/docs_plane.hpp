#pragma once

// Docstrings of register_plane.cpp.
namespace heatmatch::python::docs {

inline constexpr const char* plane_irradiance = R"(Compute the irradiance on a tilted plane.

Parameters
----------
tilt_deg : float or array_like
    Tilt of the plane [deg], 0 flat to 90 upright. All numeric parameters broadcast.
plane_azimuth_deg : float or array_like
    Azimuth that the plane faces, clockwise from north [deg], 0 to 360.
apparent_zenith_deg : float or array_like
    Zenith angle of the sun with refraction [deg], 0 to 180.
sun_azimuth_deg : float or array_like
    Azimuth of the sun, clockwise from north [deg], 0 to 360.
ghi_w_m2 : float or array_like
    Global horizontal irradiance [W/m2], 0 to 3000.
dni_w_m2 : float or array_like
    Direct normal irradiance [W/m2], 0 to 3000.
dhi_w_m2 : float or array_like
    Diffuse horizontal irradiance [W/m2], 0 to 3000.
extraterrestrial_w_m2 : float or array_like
    Irradiance normal to the sun outside the atmosphere [W/m2], 1300 to 1450.
albedo : float or array_like
    Reflectance of the ground [dimensionless], 0 to 1.
model : str
    Model of the diffuse sky: "hay_davies" or "isotropic".
behind_glass : bool
    Whether to subtract reflection at the glass.

Returns
-------
PlaneIrradiance or PlaneIrradiances
    Irradiance by origin, and its sum [W/m2]: numbers for numbers, arrays for arrays.

Raises
------
InvalidInput
    A number is out of range, shapes do not broadcast, or `model` is unknown.

Notes
-----
With incidence angle ``t``, zenith angle ``z``, tilt ``b``, and ``F = DNI / I0`` (isotropic: 0)::

    beam         = DNI cos(t)
    circumsolar  = DHI F cos(t) / cos(z)
    sky          = DHI (1 - F) (1 + cos(b)) / 2
    ground       = GHI albedo (1 - cos(b)) / 2

``cos(t)`` counts as 0 with the sun behind the plane or below the horizon; ``cos(z)`` as 0.01745 at
least. The ground reflects equally in all directions. Diffuse light meets the glass at the effective
angles of Brandemuehl and Beckman, fitted for tilts from 0 to 90 deg.

References
----------
hay-davies-1980 : sky with light around the sun
liu-jordan-1963 : isotropic sky
brandemuehl-beckman-1980 : effective angles of diffuse light
de-soto-2006 : transmission of glass

Examples
--------
>>> import heatmatch as hm
>>> on = hm.plane_irradiance(
...     tilt_deg=60, plane_azimuth_deg=180, apparent_zenith_deg=65, sun_azimuth_deg=180,
...     ghi_w_m2=400, dni_w_m2=800, dhi_w_m2=62,
... )
>>> print(f"{on.total_w_m2:.0f} W/m2")
922 W/m2)";

inline constexpr const char* incidence_angle_deg =
    R"(Compute the angle between the sun and the normal of a plane.

Parameters
----------
tilt_deg : float or array_like
    Tilt of the plane [deg], 0 flat to 90 upright. All parameters broadcast.
plane_azimuth_deg : float or array_like
    Azimuth that the plane faces, clockwise from north [deg], 0 to 360.
apparent_zenith_deg : float or array_like
    Zenith angle of the sun with refraction [deg], 0 to 180.
sun_azimuth_deg : float or array_like
    Azimuth of the sun, clockwise from north [deg], 0 to 360.

Returns
-------
float or numpy.ndarray
    Incidence angle [deg], 0 to 180; above 90 the sun is behind the plane.

Raises
------
InvalidInput
    A number is out of range, or shapes do not broadcast.

Notes
-----
``cos(t) = cos(b) cos(z) + sin(b) sin(z) cos(A - Ap)`` with tilt ``b``, zenith angle ``z``, azimuth
``A`` of the sun and ``Ap`` of the plane. Exact geometry.

Examples
--------
>>> import heatmatch as hm
>>> angle = hm.incidence_angle_deg(
...     tilt_deg=60, plane_azimuth_deg=180, apparent_zenith_deg=65, sun_azimuth_deg=180
... )
>>> print(f"{angle:.1f} deg")
5.0 deg)";

inline constexpr const char* glass_transmission =
    R"(Compute the transmission of the glass relative to normal incidence.

Parameters
----------
incidence_deg : float or array_like
    Incidence angle [deg], 0 to 180, any shape.

Returns
-------
float or numpy.ndarray
    Transmission over that at normal incidence [dimensionless]; 0 from 90 deg on.

Raises
------
InvalidInput
    An angle is out of range.

Notes
-----
Snell, Fresnel and absorption, divided by the value at normal incidence, for glass of index 1.526,
``L`` = 2 mm thick, that absorbs ``K`` = 4 per m::

    exp(-K L / cos(r)) (1 - (sin(r - t)^2 / sin(r + t)^2 + tan(r - t)^2 / tan(r + t)^2) / 2)
    sin(r) = sin(t) / 1.526

References
----------
de-soto-2006 : incidence-angle modifier

Examples
--------
>>> import heatmatch as hm
>>> print(f"{hm.glass_transmission(60.0):.2f}")
0.95)";

inline constexpr const char* noct_cell_temperature_c =
    R"(Compute the cell temperature from the nominal operating cell temperature.

Parameters
----------
irradiance_w_m2 : float or array_like
    Irradiance on the plane [W/m2], 0 to 3000, any shape.
air_c : float or array_like
    Air temperature [°C], -90 to 70. Broadcast against `irradiance_w_m2`.
noct_c : float
    Nominal operating cell temperature (NOCT) [°C], 30 to 80.

Returns
-------
float or numpy.ndarray
    Cell temperature [°C].

Raises
------
InvalidInput
    A number is out of range, or shapes do not broadcast.

Notes
-----
``Tc = Ta + G (NOCT - 20) / 800``. Valid for an open rack in wind of 1 m/s.

References
----------
ross-1980 : cell temperature by NOCT

Examples
--------
>>> import heatmatch as hm
>>> hm.noct_cell_temperature_c(800.0, 10.0)
35.0)";

inline constexpr const char* faiman_cell_temperature_c =
    R"(Compute the panel temperature from irradiance, air and wind.

Parameters
----------
irradiance_w_m2 : float or array_like
    Irradiance on the plane [W/m2], 0 to 3000, any shape.
air_c : float or array_like
    Air temperature [°C], -90 to 70. Broadcast against `irradiance_w_m2`.
wind_m_s : float or array_like
    Wind speed at the panels [m/s], 0 to 100. Broadcast likewise.
still_w_m2k : float
    Heat loss coefficient in still air, u0 [W/m2K], 1 to 200.
wind_w_m2k_per_ms : float
    Increase of that coefficient with wind speed, u1 [W/m2K per m/s], 0 to 50.

Returns
-------
float or numpy.ndarray
    Panel temperature [°C].

Raises
------
InvalidInput
    A number is out of range, or shapes do not broadcast.

Notes
-----
``Tp = Ta + G / (u0 + u1 v)``. The default coefficients are for an open rack.

References
----------
faiman-2008 : panel temperature with wind

Examples
--------
>>> import heatmatch as hm
>>> print(f"{hm.faiman_cell_temperature_c(800.0, 10.0, 2.0):.1f} °C")
30.7 °C)";

}  // namespace heatmatch::python::docs
