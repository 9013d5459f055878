#pragma once

#include "bed_geometry.hpp"

namespace heatmatch {

/// The bulk of a bed, and the mean of where it meets its wall [K].
struct BedBulk {
    double bed_k = 0.0;
    double edge_k = 0.0;
};

/// The bulk as one time constant behind its wall.
[[nodiscard]] BedBulk bulk_of(const BedCharge& charge, const BedGeometry& geometry, double power_w);

}  // namespace heatmatch
