#pragma once

#include <limits>

inline constexpr double endless = std::numeric_limits<double>::infinity();
inline constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();
