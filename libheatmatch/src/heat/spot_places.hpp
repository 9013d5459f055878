#pragma once

#include "spot_form.hpp"

#include <span>
#include <vector>

#include "heatmatch/heat/store_shell.hpp"

namespace heatmatch {

/// The spot of a level face that legs are nearest to: beside one of them, or amid all.
[[nodiscard]] SurfaceSpot level_spot(std::span<const LegSegment> legs, double z_m, double length_m);

/// The spot of a round wall that upright legs are nearest to: beside one of them, or between two.
[[nodiscard]] SurfaceSpot upright_wall_spot(std::span<const LegSegment> legs, double radius_m,
                                            double length_m);

/// Spots of the wall at the ends of lying legs and beside them. A box counts as wide as it is
/// narrow, unless a leg fits along its longer side only. Legs aside may be so towards an end.
[[nodiscard]] std::vector<SurfaceSpot> lying_wall_spots(std::span<const LegSegment> legs,
                                                        const StoreShell& shell, double length_m,
                                                        double aside_m);

}  // namespace heatmatch
