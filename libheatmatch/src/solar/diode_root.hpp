#pragma once

#include <algorithm>
#include <cmath>
#include <limits>

namespace heatmatch {

inline constexpr double largest_exponent = 700.0;

inline double clamped_exp(double exponent) {
    return std::exp(std::clamp(exponent, -largest_exponent, largest_exponent));
}

/// Root z of `exp(z + ln_i0) + q z = c`. The left side is increasing and convex, so both `c/q` and
/// `ln c - ln_i0` are upper bounds; from the smaller one three steps of fourth order reach 1e-15
/// over the whole range of c/q and c/I0.
inline double solve_diode(double c, double q, double ln_i0) {
    double z = q > 0.0 ? c / q : std::numeric_limits<double>::infinity();
    if (c > 0.0) z = std::min(z, std::log(c) - ln_i0);
    for (int step = 0; step < 3; ++step) {
        const double e = clamped_exp(z + ln_i0);
        const double f1 = e + q;
        const double f = e + q * z - c;
        const double fe = f * e;
        const double step_z = f * (f1 * f1 - 0.5 * fe) / (f1 * (f1 * f1 - fe) + f * fe / 6.0);
        if (!std::isfinite(step_z)) break;
        z -= step_z;
    }
    return z;
}

}  // namespace heatmatch
