#pragma once

#include <span>

#include "heatmatch/heat/leg_layout.hpp"

namespace heatmatch {

/// Half of the width of legs around the axis, their radius included [m].
[[nodiscard]] LegLayout::Leg half_across(std::span<const LegLayout::Leg> legs, double radius_m);

}  // namespace heatmatch
