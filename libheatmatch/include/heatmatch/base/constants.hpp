#pragma once

#include <numbers>

namespace heatmatch {

inline constexpr double pi = std::numbers::pi;

inline constexpr double hours_of_day = 24.0;
inline constexpr double seconds_of_day = 86400.0;
inline constexpr double joules_per_kwh = 3.6e6;

/// Stefan-Boltzmann constant [W/m2K4]. @cite codata-2018
inline constexpr double stefan_boltzmann = 5.670374419e-8;

}  // namespace heatmatch
