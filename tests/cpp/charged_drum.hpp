#pragma once

#include "heat_beds.hpp"

#include <cmath>
#include <numbers>

#include "heatmatch/heat/bed_field.hpp"

/// A drum of dry sand with a hairpin in it, and air of 20 °C around it.
inline heatmatch::BedField drum_field(heatmatch::BedFieldMesh mesh = {}) {
    return {dry_sand(0.27, 0.5),
            bare_cylinder(0.40, 0.45),
            upright_legs(2, 0.30, 0.06),
            20.0,
            20.0,
            mesh};
}

/// What charges it: half a sine of ten hours.
inline double sun_w(double peak_w, double hours) {
    return hours < 10.0 ? peak_w * std::sin(std::numbers::pi * hours / 10.0) : 0.0;
}
