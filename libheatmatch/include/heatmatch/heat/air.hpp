#pragma once

namespace heatmatch {

/// Properties of dry air at sea level, 100..2500 K. @cite us-std-atmosphere-1976
struct Air {
    double conductivity_w_mk = 0.0;  //!< `2.64638e-3 T^1.5 / (T + 245.4 10^(-12/T))` [W/mK]
    double kinematic_viscosity_m2_s =
        0.0;               //!< Sutherland `1.458e-6 T^1.5/(T + 110.4)` over density
    double prandtl = 0.0;  //!< taken as 0.70: 0.68 to 0.73 from 200 to 1200 K
};
[[nodiscard]] Air air_at(double temperature_k);

/// Free convection around a long horizontal cylinder in still air [W/m2K], by
/// `Nu = (0.60 + 0.387 Ra^(1/6) / (1 + (0.559/Pr)^(9/16))^(8/27))^2`, Ra <= 1e12, properties at the
/// film temperature. @cite churchill-chu-1975
[[nodiscard]] double free_convection_cylinder(double diameter_m, double surface_k, double air_k);

}  // namespace heatmatch
