#include "bed_geometry.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

BedGeometry bed_geometry(const BedCharge& charge) {
    BedGeometry geometry{.distances_m = charge.legs.distances_m(),
                         .length_m = charge.legs.leg_length_m,
                         .heated_m = charge.legs.heated_length_m(),
                         .air_k = charge.air_c + zero_celsius_k,
                         .seconds = charge.hours * 3600.0,
                         .days = charge.days};
    geometry.distances_m.front() =
        std::max(charge.legs.radius_m, charge.legs.sheath_radius_m + charge.gap_m);
    const double l = geometry.length_m;
    const double cube = 1.0 + 6.0 * charge.shell.volume_m3 / (pi * l * l * l);
    const double square = std::cbrt(cube * cube);
    geometry.outer_m = 0.5 * l * std::sqrt(square - 1.0);
    geometry.mean_m = geometry.outer_m * std::exp(-0.5);
    return geometry;
}

double concentration_of(const BedCharge& charge) {
    return charge.wall_concentration ? *charge.wall_concentration
                                     : charge.legs.wall_concentration(charge.shell);
}

}  // namespace heatmatch
