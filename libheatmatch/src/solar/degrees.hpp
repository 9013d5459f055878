#pragma once

#include <numbers>

namespace heatmatch {

[[nodiscard]] constexpr double radians(double degrees) {
    return degrees * std::numbers::pi / 180.0;
}

[[nodiscard]] constexpr double degrees(double radians) {
    return radians * 180.0 / std::numbers::pi;
}

}  // namespace heatmatch
