#pragma once

#include "heatmatch/base/constants.hpp"

namespace heatmatch {

[[nodiscard]] constexpr double radians(double degrees) {
    return degrees * pi / 180.0;
}

[[nodiscard]] constexpr double degrees(double radians) {
    return radians * 180.0 / pi;
}

}  // namespace heatmatch
