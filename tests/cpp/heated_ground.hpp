#pragma once

#include "heat_beds.hpp"

#include "heatmatch/heat/bed_charge.hpp"

inline constexpr double day_h = 24.0;
inline constexpr double ground_c = 12.0;

/// A heated length in ground without end: a cylinder so large that its wall stays cold.
inline heatmatch::BedCharge ground(double k_w_mk, double j_m3k, double length_m, double radius_m,
                                   double days) {
    heatmatch::BedCharge charge{.fill = constant_fill(k_w_mk, j_m3k / 2000.0, 2000.0),
                                .shell = wrapped_cylinder(200.0, 200.0, 10.0, 10.0),
                                .legs = upright_legs(1, length_m, 0.0),
                                .air_c = ground_c,
                                .hours = days * day_h,
                                .rod_j_m_k = 0.0};
    charge.legs.radius_m = radius_m;
    charge.legs.sheath_radius_m = radius_m;
    return charge;
}
