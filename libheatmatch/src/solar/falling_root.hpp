#pragma once

#include <cmath>
#include <limits>

namespace heatmatch {

/// A function's value and slope, and the size of the terms that its value is the difference of.
struct ValueAndSlope {
    double value = 0.0;
    double slope = 0.0;
    double scale = 0.0;
};

/// Root of a falling function between `low`, where it is at least 0, and `high`, where it is at
/// most 0: Newton from `start`, halving where a step leaves the bracket or does not help. It ends
/// where the value is rounding of its terms, for beyond that steps have no direction.
template <typename Function>
double falling_root(const Function& function, double low, double high, double start) {
    constexpr double rounding = 2.0 * std::numeric_limits<double>::epsilon();
    double x = start > low && start < high ? start : 0.5 * (low + high);
    double last = std::numeric_limits<double>::infinity();
    for (int step = 0; step < 200; ++step) {
        const ValueAndSlope at = function(x);
        double next = x - at.value / at.slope;
        const bool inside = std::isfinite(next) && next >= low && next <= high;
        if (std::fabs(at.value) <= rounding * at.scale) return inside ? next : x;
        (at.value > 0.0 ? low : high) = x;
        const double move = std::fabs(next - x);
        if (!inside || move > 0.5 * last) {
            next = 0.5 * (low + high);
            last = high - low;
        } else {
            last = move;
        }
        if (std::fabs(next - x) <= rounding * std::fabs(x)) return next;
        x = next;
    }
    return x;
}

}  // namespace heatmatch
