#pragma once

namespace heatmatch {

inline constexpr double usual_noct_c = 45.0;  //!< of an open-rack panel with glass [°C]

/// Cell temperature from the nominal operating cell temperature: air + G (NOCT - 20)/800 [°C], for
/// 1 m/s of wind on an open rack. @cite ross-1980
[[nodiscard]] double noct_cell_temperature_c(double irradiance_w_m2, double air_c, double noct_c);

/// Coefficients of Faiman for an open rack.
struct FaimanCooling {
    double still_w_m2k = 25.0;        //!< u0 [W/m2K]
    double wind_w_m2k_per_ms = 6.84;  //!< u1 [W/m2K per m/s]
};

/// Panel temperature with wind: air + G/(u0 + u1 v) [°C]. The wind is that at the panels.
/// @cite faiman-2008
[[nodiscard]] double faiman_cell_temperature_c(double irradiance_w_m2, double air_c,
                                               double wind_m_s, const FaimanCooling& cooling = {});

inline constexpr double panel_height_m = 2.0;  //!< height of the wind at the panels
inline constexpr double mast_height_m = 10.0;  //!< height of weather station anemometers

/// Ratio of the wind at 2 m above short grass to that at height z: ln(67.8 2 - 5.42)/ln(67.8 z -
/// 5.42), 0.75 for a mast of 10 m; at 2 m or less the ratio is 1. Among houses and trees it is
/// lower. @cite fao-56
[[nodiscard]] double wind_share_at_panels(double measured_at_m);

/// Warming of a panel in wind relative to that in the 1 m/s of NOCT: (u0 + u1)/(u0 + u1 v).
[[nodiscard]] double wind_factor(double wind_m_s, const FaimanCooling& cooling = {});

}  // namespace heatmatch
