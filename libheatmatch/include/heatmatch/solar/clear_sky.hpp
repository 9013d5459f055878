#pragma once

namespace heatmatch {

/// Irradiance on the ground: on the horizontal, normal to the sun, and from the sky alone.
struct SkyIrradiance {
    double ghi_w_m2 = 0.0;  //!< global horizontal [W/m2]
    double dni_w_m2 = 0.0;  //!< direct normal [W/m2]
    double dhi_w_m2 = 0.0;  //!< diffuse horizontal [W/m2]
};

/// Air mass relative to the zenith, from the apparent zenith angle: 1 overhead, 38 on the horizon,
/// infinite below it.
/// @cite kasten-young-1989
[[nodiscard]] double relative_air_mass(double apparent_zenith_deg);

/// Global irradiance of a clear sky from the height of the sun alone [W/m2]: 1098 cos z
/// exp(-0.059/cos z); 0 below the horizon. Elevation and haze are not included. @cite haurwitz-1945
[[nodiscard]] double haurwitz_ghi_w_m2(double apparent_zenith_deg);

/// Parameters of the clear sky of Ineichen and Perez.
struct ClearAir {
    double elevation_m = 0.0;
    double linke_turbidity = 3.0;  //!< 2 clean and cold, 3 usual, 5 and more humid or dusty
    double extraterrestrial_w_m2 = 1366.1;
};

/// Irradiance of a clear sky, with the air mass at the standard pressure of the elevation, and
/// without the brightening at large air masses added in a later paper; all zero below the horizon.
/// @cite ineichen-perez-2002
[[nodiscard]] SkyIrradiance ineichen_clear_sky(double apparent_zenith_deg, const ClearAir& air);

}  // namespace heatmatch
