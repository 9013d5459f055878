#pragma once

#include <cmath>
#include <limits>

namespace heatmatch {

/// A function's value and slope.
struct ValueAndSlope {
    double value = 0.0;
    double slope = 0.0;
};

/// Root of a falling function between `low`, where it is at least 0, and `high`, where it is at
/// most 0: Newton from `start`, halving where a step leaves the bracket or does not help.
template <typename Function>
double falling_root(const Function& function, double low, double high, double start) {
    double x = start > low && start < high ? start : 0.5 * (low + high);
    double last = std::numeric_limits<double>::infinity();
    for (int step = 0; step < 200; ++step) {
        const ValueAndSlope at = function(x);
        if (at.value == 0.0) return x;
        (at.value > 0.0 ? low : high) = x;
        double next = x - at.value / at.slope;
        const double move = std::fabs(next - x);
        if (!std::isfinite(next) || next <= low || next >= high || move > 0.5 * last) {
            next = 0.5 * (low + high);
            last = high - low;
        } else {
            last = move;
        }
        const double resolution = 4.0 * std::numeric_limits<double>::epsilon() * std::fabs(next);
        if (std::fabs(next - x) <= resolution || high - low <= resolution) return next;
        x = next;
    }
    return x;
}

}  // namespace heatmatch
