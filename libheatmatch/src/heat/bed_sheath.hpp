#pragma once

#include "bed_bulk.hpp"
#include "bed_geometry.hpp"

#include "heatmatch/heat/bed_charge.hpp"

namespace heatmatch {

/// The hottest sheath of this circuit above a bulk [K].
[[nodiscard]] double sheath_k_of(const BedCharge& charge, const BedGeometry& geometry,
                                 const BedBulk& bulk, double power_w);

/// The hottest sheath of all circuits, `own_k` that of this one [K].
[[nodiscard]] double any_sheath_k(const BedCharge& charge, const BedBulk& bulk, double power_w,
                                  double own_k);

/// Temperature in the bed at a distance from the hottest leg of this circuit, perpendicular to it
/// at half its length [K].
[[nodiscard]] double beside_leg_k(const BedCharge& charge, const BedGeometry& geometry,
                                  const BedBulk& bulk, double power_w, double distance_m);

}  // namespace heatmatch
