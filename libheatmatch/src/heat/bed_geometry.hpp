#pragma once

#include <vector>

#include "heatmatch/heat/bed_charge.hpp"

namespace heatmatch {

/// What of a charge does not change with power.
struct BedGeometry {
    std::vector<double> distances_m{};
    double length_m = 0.0;
    double heated_m = 0.0;
    double outer_m = 0.0;  //!< of a body of revolution around the legs that holds the bed [m]
    double mean_m = 0.0;   //!< where its mean temperature lies [m]
    double air_k = 0.0;
    double seconds = 0.0;
    double days = 1.0;
};

[[nodiscard]] BedGeometry bed_geometry(const BedCharge& charge);

/// How much hotter than its mean the wall is at its hottest spot, as a factor of the rise.
[[nodiscard]] double concentration_of(const BedCharge& charge);

}  // namespace heatmatch
