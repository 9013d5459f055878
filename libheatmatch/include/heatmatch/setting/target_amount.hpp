#pragma once

#include <cmath>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

/// Target temperature of a space as shown: to the half degree if stated so, otherwise to the tenth,
/// as where degrees Fahrenheit were stated (40 °F is 4.4 °C) [°C].
[[nodiscard]] inline Amount target_amount(double target_c) {
    const bool halves = std::fabs(2.0 * target_c - std::round(2.0 * target_c)) < 1e-9;
    constexpr int three = 3;
    constexpr int two = 2;
    return {.value = target_c, .unit = unit::celsius, .digits = halves ? three : two};
}

}  // namespace heatmatch
