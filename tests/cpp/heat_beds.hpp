#pragma once

#include "heatmatch/heat/conductivity.hpp"
#include "heatmatch/heat/leg_layout.hpp"
#include "heatmatch/heat/store_shell.hpp"

// Beds that several tests of the heat model lay out.

/// Dry quartz over temperature, the transition at 573 °C smeared; from memory.
inline heatmatch::HeatCapacity quartz() {
    return heatmatch::HeatCapacity({{20, 737},
                                    {100, 850},
                                    {200, 960},
                                    {300, 1045},
                                    {400, 1115},
                                    {500, 1190},
                                    {540, 1225},
                                    {560, 1400},
                                    {573, 1650},
                                    {587, 1400},
                                    {600, 1130},
                                    {700, 1143},
                                    {900, 1156}});
}

inline heatmatch::BedFill dry_sand(double k20_w_mk, double grain_mm) {
    return {.conductivity = heatmatch::Conductivity::of_grains(k20_w_mk, grain_mm),
            .heat_capacity = quartz(),
            .density_kg_m3 = 1550.0};
}

/// Of the same conductivity and heat capacity at all temperatures.
inline heatmatch::BedFill constant_fill(double k_w_mk, double j_kgk, double density_kg_m3) {
    return {.conductivity = heatmatch::Conductivity::constant(k_w_mk),
            .heat_capacity = heatmatch::HeatCapacity({{20.0, j_kgk}}),
            .density_kg_m3 = density_kg_m3};
}

inline heatmatch::StoreShell bare_cylinder(double diameter_m, double height_m,
                                           double emissivity = 0.3) {
    return heatmatch::store_shell({.shape = heatmatch::StoreShape::cylinder,
                                   .diameter_m = diameter_m,
                                   .height_m = height_m,
                                   .wall_emissivity = emissivity,
                                   .top_u_w_m2k = 3.0,
                                   .bottom_u_w_m2k = 4.0});
}

/// All sides lose by a fixed U.
inline heatmatch::StoreShell wrapped_cylinder(double diameter_m, double height_m, double side_u,
                                              double end_u) {
    return heatmatch::store_shell({.shape = heatmatch::StoreShape::cylinder,
                                   .diameter_m = diameter_m,
                                   .height_m = height_m,
                                   .top_u_w_m2k = end_u,
                                   .side_u_w_m2k = side_u,
                                   .bottom_u_w_m2k = end_u});
}

/// One leg on the axis, two beside it, or four at the corners of a square; 8 mm thick.
inline heatmatch::LegLayout upright_legs(int legs, double length_m, double spacing_m) {
    heatmatch::LegLayout layout{
        .leg_length_m = length_m, .radius_m = 0.004, .sheath_radius_m = 0.004};
    const double half = 0.5 * spacing_m;
    if (legs == 1) layout.legs = {{.x_m = 0.0, .y_m = 0.0}};
    if (legs == 2) layout.legs = {{.x_m = -half, .y_m = 0.0}, {.x_m = half, .y_m = 0.0}};
    if (legs == 4) {
        layout.legs = {{.x_m = -half, .y_m = -half},
                       {.x_m = half, .y_m = -half},
                       {.x_m = -half, .y_m = half},
                       {.x_m = half, .y_m = half}};
    }
    return layout;
}
