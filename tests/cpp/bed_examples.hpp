#pragma once

#include "demo.hpp"

#include "heatmatch/heat/bed_charge.hpp"

/// Dry sand of the starter with another conductivity at 20 °C and grain.
inline heatmatch::BedFill sand_of(double k20_w_mk, double grain_mm = 0.5) {
    heatmatch::BedFill fill = heatmatch::bed_fill(heatmatch::find_medium(starter(), "dry-sand"),
                                                  heatmatch::ConductivityEnd::typical);
    fill.conductivity = heatmatch::Conductivity::of_grains(k20_w_mk, grain_mm);
    return fill;
}

/// A cylinder of bright metal: wall emissivity 0.3, lid 3, floor 4 W/m2K.
inline heatmatch::Store bright_store(double diameter_m, double height_m) {
    return {.medium = "dry-sand",
            .shape = heatmatch::StoreShape::cylinder,
            .diameter_m = diameter_m,
            .height_m = height_m,
            .wall_emissivity = 0.3,
            .top_u_w_m2k = 3.0,
            .bottom_u_w_m2k = 4.0};
}

/// Some 15 L of sand.
inline heatmatch::Store small_pot() {
    return bright_store(0.27, 0.27);
}

/// One element of 8 mm, its legs in a row.
inline heatmatch::Element rod_of(double leg_m, int legs, double spacing_m) {
    return {.id = "rod",
            .sheath_diameter_mm = 8.0,
            .heated_length_mm = 1000.0 * leg_m * legs,
            .legs = legs,
            .leg_spacing_mm = 1000.0 * spacing_m};
}

/// One element alone in a store of sand of that conductivity at 20 °C.
inline heatmatch::BedCharge bed_of(const heatmatch::Store& store, const heatmatch::Element& element,
                                   double k20_w_mk, double hours, double air_c = 20.0) {
    return {.fill = sand_of(k20_w_mk),
            .shell = heatmatch::store_shell(store),
            .legs = heatmatch::leg_layout(element, 1, store),
            .air_c = air_c,
            .hours = hours};
}

/// One leg of 4 mm radius, far from the ends and the wall of a great bed of constant properties.
inline heatmatch::BedCharge line_source(double k_w_mk, double capacity_j_m3k, double rod_j_m_k) {
    heatmatch::BedCharge charge =
        bed_of(bright_store(20.0, 20.0), rod_of(20.0, 1, 0.05), k_w_mk, 1.0);
    charge.fill.conductivity = heatmatch::Conductivity::constant(k_w_mk);
    charge.fill.density_kg_m3 = capacity_j_m3k / 1000.0;
    charge.fill.heat_capacity = heatmatch::HeatCapacity({{20.0, 1000.0}});
    charge.rod_j_m_k = rod_j_m_k;
    return charge;
}

/// A hairpin in the small pot.
inline heatmatch::BedCharge pot_hairpin(double k20_w_mk = 0.27, double hours = 5.0) {
    return bed_of(small_pot(), rod_of(0.22, 2, 0.05), k20_w_mk, hours);
}
