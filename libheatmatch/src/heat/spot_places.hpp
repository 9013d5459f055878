#pragma once

#include "spot_form.hpp"

#include <span>
#include <vector>

#include "heatmatch/heat/store_shell.hpp"

namespace heatmatch {

/// The spot of a level face nearest to the legs: at one of them, or amid all.
[[nodiscard]] SurfaceSpot level_spot(std::span<const LegSegment> legs, double z_m);

/// The spot of a round wall nearest to upright legs: at one of them, or between two.
[[nodiscard]] SurfaceSpot upright_wall_spot(std::span<const LegSegment> legs, double radius_m);

/// Spots of the wall at the ends of horizontal legs and beside them. A box counts with its shorter
/// side as width, unless a leg fits along its longer side only. Legs moved aside may be moved
/// towards an end.
[[nodiscard]] std::vector<SurfaceSpot> lying_wall_spots(std::span<const LegSegment> legs,
                                                        const StoreShell& shell, double aside_m);

}  // namespace heatmatch
