#pragma once

/// 0 °C.
inline constexpr double zero_k = 273.15;
