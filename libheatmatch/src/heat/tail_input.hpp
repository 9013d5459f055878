#pragma once

#include "heatmatch/heat/hot_tail.hpp"

namespace heatmatch {

/// Diameter of the cold pin over that of the sheath, from memory.
inline constexpr double cold_pin_share = 0.2875;
inline constexpr double tube_wall_share = 0.0875;
inline constexpr double magnesia_w_mk = 2.3;

/// Throws InvalidInput for a number of a hot tail without meaning.
void check_hot_tail(const HotTail& tail);

}  // namespace heatmatch
