#include "line_spread.hpp"

#include <algorithm>
#include <cmath>

#include <boost/math/special_functions/expint.hpp>

namespace heatmatch {

namespace {

/// `E1(x)`, the integral of `exp(-u)/u` from x on.
double exponential_integral(double x) {
    constexpr double none_left = 50.0;
    if (!(x < none_left)) return 0.0;
    using Policy = boost::math::policies::policy<boost::math::policies::promote_double<false>>;
    return boost::math::expint(1, x, Policy());
}

}  // namespace

double line_spread(const LineShape& shape, std::span<const double> distances_m,
                   double diffusivity_time_m2) {
    const double half = 0.5 * shape.length_m;
    const double m2 = shape.mean_m * shape.mean_m;
    double sum = 0.0;
    for (const double d : distances_m) {
        const double d2 = d * d;
        const double r2 =
            d <= shape.surface_m
                ? d2 + 2.246 * diffusivity_time_m2
                : d2 * std::exp(exponential_integral(d2 / (4.0 * diffusivity_time_m2)));
        const double rho = 1.0 / std::sqrt(std::sqrt(1.0 / (r2 * r2) + 1.0 / (m2 * m2)));
        sum += std::max(0.0, std::asinh(half / d) - std::asinh(half / rho));
    }
    return sum;
}

}  // namespace heatmatch
