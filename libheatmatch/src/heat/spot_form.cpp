#include "spot_form.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include <boost/math/quadrature/gauss.hpp>
#include <boost/math/special_functions/expint.hpp>

#include "heatmatch/base/constants.hpp"

namespace heatmatch {

namespace {

/// `x exp(x) E1(x)`: what a skin leaves of a spot; 1 without one.
double left_by_skin(double distance_m, double skin_m) {
    constexpr double no_skin = 40.0;
    if (distance_m > no_skin * skin_m) return 1.0;
    const double x = distance_m / skin_m;
    using Policy = boost::math::policies::policy<boost::math::policies::promote_double<false>>;
    return x * std::exp(x) * boost::math::expint(1, x, Policy());
}

}  // namespace

double spot_form(std::span<const LegSegment> legs, const SurfaceSpot& spot, const SpotPath& path) {
    double sum = 0.0;
    const int images = path.mirror > 0.0 ? 3 : 1;
    for (std::size_t i = 0; i < legs.size() * static_cast<std::size_t>(images); ++i) {
        const LegSegment& leg = legs[i / static_cast<std::size_t>(images)];
        const int image = static_cast<int>(i % static_cast<std::size_t>(images));
        const double tall_m = leg.along_x ? 0.0 : path.length_m;
        const double z_m = image == 0   ? leg.z_m
                           : image == 1 ? -leg.z_m - tall_m
                                        : 2.0 * path.height_m - leg.z_m - tall_m;
        const double mirror_u = image == 1 ? path.floor_u_over_k_m : path.lid_u_over_k_m;
        const double dx = leg.x_m - spot.x_m;
        const double dy = leg.y_m - spot.y_m;
        const double dz = z_m - spot.z_m;
        const double from = leg.along_x ? dx : dz;
        const double across = leg.along_x ? dz : dx;
        const double beside = std::max(std::hypot(across, dy), path.radius_m);
        const double normal = leg.along_x ? spot.normal_x : spot.normal_z;
        const double depth =
            dx * spot.normal_x + dy * spot.normal_y + dz * spot.normal_z - from * normal;
        // s = d sinh(u): then ds/r = du, and what is left of the integrand is smooth.
        const auto at = [&](double u) {
            const double along = beside * std::sinh(u);
            const double r = std::hypot(beside, along);
            constexpr double nothing_comes = 4.0;  // erfc of it is 2e-8
            if (r > nothing_comes * path.reach_m) return 0.0;
            const double h = std::clamp(std::fabs(depth + along * normal), 0.0, r);
            const double to_air = 1.0 + path.u_over_k_m * r;
            const double taken = 1.0 - (1.0 + path.u_over_k_m * h) / (to_air * to_air);
            const double come = std::erfc(r / path.reach_m);
            const auto taken_of = [&](double share, double per_m) {
                return share > 0.0 ? share * std::erfc((r + path.sink_share / per_m) / path.reach_m)
                                   : 0.0;
            };
            double value = come - taken_of(taken, path.u_over_k_m);
            if (image > 0 && come > 0.0) {
                const double twice = 2.0 * mirror_u * r / (1.0 + mirror_u * r);
                value *= path.mirror * (1.0 - taken_of(twice, mirror_u) / come);
            }
            if (path.skin_m > 0.0) value *= left_by_skin(r, path.skin_m);
            return value;
        };
        sum += boost::math::quadrature::gauss<double, 10>::integrate(
            at, std::asinh(from / beside), std::asinh((from + path.length_m) / beside));
    }
    return sum / (2.0 * pi);
}

}  // namespace heatmatch
