#pragma once

#include <vector>

#include "heatmatch/heat/bed_charge.hpp"

namespace heatmatch {

/// Parameters of a charge that do not depend on power.
struct BedGeometry {
    std::vector<double> distances_m{};
    double length_m = 0.0;
    double heated_m = 0.0;
    double outer_m = 0.0;  //!< outer radius of a body of revolution around the legs with the volume
                           //!< of the bed [m]
    double mean_m = 0.0;   //!< radius at which it has its mean temperature [m]
    double air_k = 0.0;
    double seconds = 0.0;
    double days = 1.0;
};

[[nodiscard]] BedGeometry bed_geometry(const BedCharge& charge);

/// Rise of the hottest spot of the wall over the mean rise.
[[nodiscard]] double concentration_of(const BedCharge& charge);

}  // namespace heatmatch
