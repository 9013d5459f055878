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

/// Panel temperature with wind: air + G/(u0 + u1 v) [°C]. The wind is that at the panels; a mast
/// of 10 m over open land reads about 1.4 times that of 2 m (log law, roughness 0.03 m).
/// @cite faiman-2008
[[nodiscard]] double faiman_cell_temperature_c(double irradiance_w_m2, double air_c,
                                               double wind_m_s, const FaimanCooling& cooling = {});

/// How much less a wind lets a panel warm than the 1 m/s of NOCT does: (u0 + u1)/(u0 + u1 v).
[[nodiscard]] double wind_factor(double wind_m_s, const FaimanCooling& cooling = {});

}  // namespace heatmatch
