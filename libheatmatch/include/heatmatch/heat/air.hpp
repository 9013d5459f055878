#pragma once

namespace heatmatch {

/// Reference temperature for the headroom of temperatures [°C]. Headroom then measures the distance
/// to a part's limit, not the share of its own heating.
inline constexpr double room_c = 20.0;

/// Air around the end of an element where nothing is stated [°C]. Wire rated 150 °C or more is
/// usual there; common practice, no source.
inline constexpr double careful_air_c = 100.0;

/// Properties of dry air at sea level, 100..2500 K. @cite us-std-atmosphere-1976
struct Air {
    double conductivity_w_mk = 0.0;  //!< `2.64638e-3 T^1.5 / (T + 245.4 10^(-12/T))` [W/mK]
    double kinematic_viscosity_m2_s =
        0.0;               //!< Sutherland `1.458e-6 T^1.5/(T + 110.4)` over density
    double prandtl = 0.0;  //!< constant 0.70: 0.68 to 0.73 from 200 to 1200 K
};
[[nodiscard]] Air air_at(double temperature_k);

/// Free convection around a long horizontal cylinder in still air [W/m2K], by
/// `Nu = (0.60 + 0.387 Ra^(1/6) / (1 + (0.559/Pr)^(9/16))^(8/27))^2`, Ra <= 1e12, properties at the
/// film temperature. @cite churchill-chu-1975
[[nodiscard]] double free_convection_cylinder(double diameter_m, double surface_k, double air_k);

/// Nusselt number of a cylinder in cross flow,
/// `0.3 + 0.62 Re^(1/2) Pr^(1/3) / (1 + (0.4/Pr)^(2/3))^(1/4) (1 + (Re/282000)^(5/8))^(4/5)`;
/// Re Pr > 0.2. @cite churchill-bernstein-1977
[[nodiscard]] double cross_flow_nusselt(double reynolds, double prandtl);

/// Convection around a long horizontal cylinder [W/m2K]: free, and with wind across it
/// `(h_free^3 + h_wind^3)^(1/3)`. Wind along it cools less. @cite incropera
[[nodiscard]] double convection_cylinder(double diameter_m, double surface_k, double air_k,
                                         double wind_m_s);

}  // namespace heatmatch
