#pragma once

#include "bed_geometry.hpp"

namespace heatmatch {

/// Temperatures of the bulk, and mean of the edge at the wall [K].
struct BedBulk {
    double bed_k = 0.0;
    double edge_k = 0.0;
};

/// The bulk with one time constant behind its wall.
[[nodiscard]] BedBulk bulk_of(const BedCharge& charge, const BedGeometry& geometry, double power_w);

}  // namespace heatmatch
