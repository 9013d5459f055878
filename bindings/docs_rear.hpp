#pragma once

// Docstrings of register_rear.cpp.
namespace heatmatch::python::docs {

inline constexpr const char* rear_irradiance =
    R"(Compute the irradiance on the backs of the panels, averaged over their height.

Parameters
----------
apparent_zenith_deg : float or array_like
    Zenith angle of the sun with refraction [deg], 0 to 180. All numeric parameters broadcast.
sun_azimuth_deg : float or array_like
    Azimuth of the sun, clockwise from north [deg], 0 to 360.
dni_w_m2 : float or array_like
    Direct normal irradiance [W/m2], 0 to 3000.
dhi_w_m2 : float or array_like
    Diffuse horizontal irradiance [W/m2], 0 to 3000.
extraterrestrial_w_m2 : float or array_like
    Irradiance normal to the sun outside the atmosphere [W/m2], 1300 to 1450.
model : str
    Model of the diffuse sky: "hay_davies" or "isotropic".
behind_glass : bool
    Whether to subtract reflection at the glass of the backs.

Returns
-------
PlaneIrradiance or PlaneIrradiances
    Irradiance by origin, and its sum [W/m2]: numbers for numbers, arrays for arrays.

Raises
------
InvalidInput
    The site has no `tilt_deg`, a number is out of range, shapes do not broadcast, or `model` is
    unknown.

Notes
-----
View factors in two dimensions, for long rows over level ground, with the shadows of the rows on the
ground. Reads ``tilt_deg``, ``azimuth_deg``, ``albedo``, ``panel_height_m``, ``row_slant_m`` and
``row_pitch_m`` of the site; without a pitch there is one row. Backs and fronts reflect nothing, and
the horizon is not brighter than the sky. Within 4 % of ANTS-2D and 9 % of solarfactors, each summed
over moments of 20 layouts. Too low at the ends of rows.

References
----------
marion-2017 : view factors of the ground
anderson-2024 : reference model

Examples
--------
>>> import heatmatch as hm
>>> site = hm.Site(latitude_deg=44, tilt_deg=60, record_low_c=-25, albedo=0.6)
>>> on = site.rear_irradiance(
...     apparent_zenith_deg=50, sun_azimuth_deg=180, dni_w_m2=800, dhi_w_m2=90
... )
>>> print(f"{on.total_w_m2:.0f} W/m2")
176 W/m2)";

}  // namespace heatmatch::python::docs
