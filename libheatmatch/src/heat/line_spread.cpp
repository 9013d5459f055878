#include "line_spread.hpp"

#include <cmath>

#include <boost/math/special_functions/expint.hpp>

namespace heatmatch {

namespace {

/// `exp(E1(x))`, E1 the integral of `exp(-u)/u` from x on: by its series near 0, the most frequent
/// case, to save time.
double exp_of_e1(double x) {
    constexpr double none_left = 50.0;
    constexpr double exp_of_minus_euler = 0.56145948356688517;
    if (!(x < none_left)) return 1.0;
    if (x <= 1.0) {
        // E1(x) = -gamma - ln x + sum of -(-x)^n/(n n!), to 1e-8.
        const double series =
            x *
            (1.0 -
             x * (1.0 / 4.0 -
                  x * (1.0 / 18.0 -
                       x * (1.0 / 96.0 -
                            x * (1.0 / 600.0 - x * (1.0 / 4320.0 -
                                                    x * (1.0 / 35280.0 - x * (1.0 / 322560.0 -
                                                                              x / 3265920.0))))))));
        return exp_of_minus_euler / x * std::exp(series);
    }
    using Policy = boost::math::policies::policy<boost::math::policies::promote_double<false>>;
    return std::exp(boost::math::expint(1, x, Policy()));
}

/// `exp(asinh(x))` of a positive number.
double exp_of_asinh(double x) {
    return x + std::sqrt(x * x + 1.0);
}

}  // namespace

LineSpread::LineSpread(const LineShape& shape, std::span<const double> distances_m)
    : half_m_(0.5 * shape.length_m) {
    const double m2 = shape.mean_m * shape.mean_m;
    per_mean_m4_ = 1.0 / (m2 * m2);
    legs_.reserve(distances_m.size());
    for (const double d : distances_m) {
        legs_.push_back({.square_m2 = d * d,
                         .reach = exp_of_asinh(half_m_ / d),
                         .own_surface = d <= shape.surface_m});
    }
}

double LineSpread::at(double diffusivity_time_m2) const {
    constexpr double large = 1e200;
    double sum = 0.0;
    double product = 1.0;  // of exp(asinh(half/d) - asinh(half/rho)): one logarithm for all legs
    for (const Leg& leg : legs_) {
        const double d2 = leg.square_m2;
        const double r2 = leg.own_surface ? d2 + 2.246 * diffusivity_time_m2
                                          : d2 * exp_of_e1(d2 / (4.0 * diffusivity_time_m2));
        const double per_rho = std::sqrt(std::sqrt(1.0 / (r2 * r2) + per_mean_m4_));
        const double ratio = leg.reach / exp_of_asinh(half_m_ * per_rho);
        if (ratio > 1.0) product *= ratio;
        if (product > large) {
            sum += std::log(product);
            product = 1.0;
        }
    }
    return sum + std::log(product);
}

}  // namespace heatmatch
