#pragma once

#include <numbers>

namespace heatmatch {

inline constexpr double pi = std::numbers::pi;

/// Stefan-Boltzmann constant [W/m2K4]. @cite codata-2018
inline constexpr double stefan_boltzmann = 5.670374419e-8;

}  // namespace heatmatch
