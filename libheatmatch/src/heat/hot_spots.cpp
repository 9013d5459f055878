#include "hot_spots.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include <boost/math/quadrature/gauss.hpp>
#include <boost/math/special_functions/expint.hpp>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

namespace {

/// A surface takes heat as a line of sinks behind it would, `exp(-H s)` each: how deep they lie in
/// the mean, as a share of 1/H. That heat comes there later than to the surface.
constexpr double sink_share = 0.7;

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
    for (const LegSegment& leg : legs) {
        const double dx = leg.x_m - spot.x_m;
        const double dy = leg.y_m - spot.y_m;
        const double dz = leg.z_m - spot.z_m;
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
            const double h = std::clamp(std::fabs(depth + along * normal), 0.0, r);
            const double to_air = 1.0 + path.u_over_k_m * r;
            const double taken = 1.0 - (1.0 + path.u_over_k_m * h) / (to_air * to_air);
            double value = std::erfc(r / path.reach_m);
            if (taken > 0.0) {
                value -= taken * std::erfc((r + sink_share / path.u_over_k_m) / path.reach_m);
            }
            if (path.skin_m > 0.0) value *= left_by_skin(r, path.skin_m);
            return value;
        };
        sum += boost::math::quadrature::gauss<double, 10>::integrate(
            at, std::asinh(from / beside), std::asinh((from + path.length_m) / beside));
    }
    return sum / (2.0 * pi);
}

std::vector<LegSegment> leg_segments(const LegLayout& legs, const StoreShell& shell) {
    double lowest_m = 0.0;
    double highest_m = 0.0;
    for (const LegLayout::Leg& leg : legs.legs) {
        lowest_m = std::min(lowest_m, leg.y_m);
        highest_m = std::max(highest_m, leg.y_m);
    }
    const double tall_m = legs.lies ? highest_m - lowest_m : legs.leg_length_m;
    const double room_m = std::max(0.0, shell.height_m - tall_m);
    const double low_m = std::min(legs.low_m.value_or(0.5 * room_m), room_m);
    std::vector<LegSegment> segments;
    segments.reserve(legs.legs.size());
    for (const LegLayout::Leg& leg : legs.legs) {
        segments.push_back(legs.lies ? LegSegment{.x_m = -0.5 * legs.leg_length_m,
                                                  .y_m = leg.x_m,
                                                  .z_m = low_m + leg.y_m - lowest_m,
                                                  .along_x = true}
                                     : LegSegment{.x_m = leg.x_m, .y_m = leg.y_m, .z_m = low_m});
    }
    return segments;
}

double hottest_spot_k(const BedCharge& charge, std::span<const LegSegment> legs,
                      std::span<const SurfaceSpot> spots, double w_per_m, const FaceHeat& face) {
    const Conductivity& conductivity = charge.fill.conductivity;
    const double diffusivity = conductivity.mean(face.base_k, face.hot_k) /
                               charge.fill.mean_capacity_j_m3k(face.base_k, face.hot_k);
    // Heat of the days before is still about: as if they were one.
    const double seconds = 3600.0 * charge.hours * charge.days;
    const double reach_m =
        1.0 / std::sqrt(1.0 / (4.0 * diffusivity * seconds) + 1.0 / (face.reach_m * face.reach_m));
    const double base_theta = conductivity.theta(face.base_k);
    const auto form_at = [&](const SurfaceSpot& spot, double k) {
        return spot_form(legs, spot,
                         {.length_m = charge.legs.leg_length_m,
                          .radius_m = charge.legs.radius_m,
                          .reach_m = reach_m,
                          .u_over_k_m = face.u_w_m2k / k,
                          .skin_m = face.skin_w_k / k});
    };
    const auto spot_k_of = [&](double form) {
        constexpr double hottest_k = 3500.0;
        return std::min(conductivity.temperature_k(base_theta + w_per_m * form), hottest_k);
    };
    const SurfaceSpot* hottest = nullptr;
    double most = 0.0;
    const double first_k = conductivity.mean(face.base_k, face.base_k);
    for (const SurfaceSpot& spot : spots) {
        const double form = form_at(spot, first_k);
        if (hottest != nullptr && form <= most) continue;
        hottest = &spot;
        most = form;
    }
    if (hottest == nullptr) return face.base_k;
    double spot_k = spot_k_of(most);
    constexpr int most_steps = 8;
    constexpr double close_enough_k = 1e-4;
    for (int step = 0; step < most_steps; ++step) {
        const double next_k = spot_k_of(form_at(*hottest, conductivity.mean(face.base_k, spot_k)));
        const double moved = std::fabs(next_k - spot_k);
        spot_k = next_k;
        if (moved < close_enough_k) break;
    }
    return std::max(spot_k, face.base_k);
}

namespace {

constexpr std::size_t most_spots = 16;  // of many legs those in the middle and outermost

double square_out(const LegLayout::Leg& leg) {
    return leg.x_m * leg.x_m + leg.y_m * leg.y_m;
}

/// The legs that spots are looked for at: all, or the innermost and the outermost ones.
std::vector<std::size_t> looked_at(const LegLayout& layout) {
    std::vector<std::size_t> order(layout.legs.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
    if (order.size() <= most_spots) return order;
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return square_out(layout.legs[a]) < square_out(layout.legs[b]);
    });
    order.erase(order.begin() + most_spots / 2, order.end() - most_spots / 2);
    return order;
}

/// Spots of a level face, beside the legs and amid all.
std::vector<SurfaceSpot> level_spots(std::span<const LegSegment> legs,
                                     std::span<const std::size_t> looked, double z_m,
                                     double length_m) {
    std::vector<SurfaceSpot> spots;
    SurfaceSpot amid{.z_m = z_m, .normal_z = z_m > 0.0 ? -1.0 : 1.0};
    for (const LegSegment& leg : legs) {
        amid.x_m += (leg.x_m + (leg.along_x ? 0.5 * length_m : 0.0)) / double(legs.size());
        amid.y_m += leg.y_m / double(legs.size());
    }
    spots.push_back(amid);
    for (const std::size_t i : looked) {
        const LegSegment& leg = legs[i];
        spots.push_back({.x_m = leg.x_m + (leg.along_x ? 0.5 * length_m : 0.0),
                         .y_m = leg.y_m,
                         .z_m = z_m,
                         .normal_z = amid.normal_z});
    }
    return spots;
}

/// Spots of the wall that legs come near to: half a radius, or less. A box counts as wide as it is
/// narrow, unless a leg fits along its longer side only.
std::vector<SurfaceSpot> wall_spots(std::span<const LegSegment> legs,
                                    std::span<const std::size_t> looked, const StoreShell& shell,
                                    double length_m) {
    constexpr double near_share = 0.5;
    std::vector<SurfaceSpot> spots;
    const double radius_m = shell.radius_m;
    const double near_m = near_share * radius_m;
    for (const std::size_t i : looked) {
        const LegSegment& leg = legs[i];
        if (leg.along_x) {
            const bool by_width = !shell.round && length_m <= 2.0 * radius_m;
            const double half_m =
                shell.round ? std::sqrt(std::max(0.0, radius_m * radius_m - leg.y_m * leg.y_m))
                            : (by_width ? radius_m : 0.5 * shell.length_m);
            const double end_m = std::max(half_m, 0.5 * length_m);
            if (end_m - 0.5 * length_m < near_m) {
                spots.push_back({.x_m = end_m, .y_m = leg.y_m, .z_m = leg.z_m, .normal_x = -1.0});
            }
            if (radius_m - std::fabs(leg.y_m) < near_m) {
                const double side = leg.y_m < 0.0 ? -1.0 : 1.0;
                spots.push_back({.y_m = side * std::max(radius_m, std::fabs(leg.y_m)),
                                 .z_m = leg.z_m,
                                 .normal_y = -side});
            }
            continue;
        }
        const double out_m = std::hypot(leg.x_m, leg.y_m);
        if (out_m <= 0.0 || radius_m - out_m >= near_m) continue;
        const double x = leg.x_m / out_m;
        const double y = leg.y_m / out_m;
        const double wall_m = std::max(radius_m, out_m);
        spots.push_back({.x_m = x * wall_m,
                         .y_m = y * wall_m,
                         .z_m = leg.z_m + 0.5 * length_m,
                         .normal_x = -x,
                         .normal_y = -y});
    }
    return spots;
}

}  // namespace

StoreSpots store_spots(const BedCharge& charge, double edge_k, double sheath_k, double power_w) {
    constexpr double base_share = 0.4;
    constexpr double hot_share = 0.5;
    constexpr double reach_radii = 2.0;
    const StoreShell& shell = charge.shell;
    const double air_k = charge.air_c + zero_celsius_k;
    const double length_m = charge.legs.leg_length_m;
    const std::vector<LegSegment> legs = leg_segments(charge.legs, shell);
    const std::vector<std::size_t> looked = looked_at(charge.legs);
    const double w_per_m = power_w / charge.legs.heated_length_m();
    // Of a cylinder as wide as it is high.
    const double radius_m = std::cbrt(shell.volume_m3 / (2.0 * pi));
    const auto hottest = [&](const std::vector<SurfaceSpot>& spots, double u) {
        const double found_k = hottest_spot_k(charge, legs, spots, w_per_m,
                                              {.base_k = air_k + base_share * (edge_k - air_k),
                                               .hot_k = air_k + hot_share * (sheath_k - air_k),
                                               .reach_m = reach_radii * radius_m,
                                               .u_w_m2k = u,
                                               .skin_w_k = shell.skin_w_k});
        return std::min(found_k, sheath_k);
    };
    const std::vector<SurfaceSpot> beside = wall_spots(legs, looked, shell, length_m);
    return {
        .wall_k = beside.empty() ? air_k : hottest(beside, shell.side_w_m2k(edge_k, air_k)),
        .lid_k = hottest(level_spots(legs, looked, shell.height_m, length_m), shell.top_u_w_m2k),
        .floor_k = hottest(level_spots(legs, looked, 0.0, length_m), shell.floor_u_w_m2k())};
}

}  // namespace heatmatch
