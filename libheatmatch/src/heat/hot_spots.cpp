#include "hot_spots.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <span>
#include <vector>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

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

namespace {

/// What was fitted of a face.
struct FaceFit {
    double base_share = 0.0;   //!< of the edge's rise
    double hot_share = 0.0;    //!< of the sheath's rise: as hot is the fill on the way, about
    double reach_radii = 0.0;  //!< of a cylinder as wide as it is high, in the long run
    double sink_share = 0.0;
    double factor = 0.0;  //!< `factor form^(1 - less)`
    double less = 0.0;
    double mirror = 0.0;
};
constexpr FaceFit level_fit{.base_share = 0.092,
                            .hot_share = 0.66,
                            .reach_radii = 2.53,
                            .sink_share = 0.60,
                            .factor = 0.913,
                            .less = 0.06};
constexpr FaceFit wall_fit{.base_share = 0.062,
                           .hot_share = 0.71,
                           .reach_radii = 3.17,
                           .sink_share = 0.49,
                           .factor = 0.975,
                           .less = 0.084,
                           .mirror = 0.605};

/// Legs of a charge and what they give.
struct SpotCase {
    const BedCharge& charge;
    const SpotBase& base;
    std::vector<LegSegment> legs{};
    double w_per_m = 0.0;
};

/// Hottest of the spots [K]; `u_at` tells what leaves a face of some temperature [W/m2K].
template <class HeatLoss>
double hottest_spot_k(const SpotCase& at, std::span<const SurfaceSpot> spots, const FaceFit& fit,
                      const HeatLoss& u_at) {
    const BedCharge& charge = at.charge;
    const StoreShell& shell = charge.shell;
    const Conductivity& conductivity = charge.fill.conductivity;
    const double air_k = charge.air_c + zero_celsius_k;
    const double base_k = air_k + fit.base_share * (at.base.edge_k - air_k) + at.base.before_k;
    const double hot_k = std::max(base_k, air_k + fit.hot_share * (at.base.sheath_k - air_k));
    const double diffusivity =
        conductivity.mean(base_k, hot_k) / charge.fill.mean_capacity_j_m3k(base_k, hot_k);
    const double long_m = fit.reach_radii * std::cbrt(shell.volume_m3 / (2.0 * pi));
    const double seconds = 3600.0 * charge.hours;
    const double reach_m =
        1.0 / std::sqrt(1.0 / (4.0 * diffusivity * seconds) + 1.0 / (long_m * long_m));
    const double base_theta = conductivity.theta(base_k);
    const auto next_k = [&](const SurfaceSpot& spot, double spot_k) {
        constexpr double melts_k = 3500.0;
        const double k = conductivity.mean(base_k, spot_k);
        const double form = spot_form(at.legs, spot,
                                      {.length_m = charge.legs.leg_length_m,
                                       .radius_m = charge.legs.radius_m,
                                       .reach_m = reach_m,
                                       .u_over_k_m = u_at(spot_k) / k,
                                       .skin_m = shell.skin_w_k / k,
                                       .sink_share = fit.sink_share,
                                       .mirror = fit.mirror,
                                       .height_m = shell.height_m,
                                       .floor_u_over_k_m = shell.floor_u_w_m2k() / k,
                                       .lid_u_over_k_m = shell.top_u_w_m2k / k});
        const double theta =
            base_theta + at.w_per_m * fit.factor * std::pow(std::max(form, 0.0), 1.0 - fit.less);
        return std::min(conductivity.temperature_k(theta), melts_k);
    };
    double hottest = base_k;
    for (const SurfaceSpot& spot : spots) {
        double spot_k = base_k;
        double moved_before = 0.0;
        constexpr int most_steps = 12;
        constexpr double close_enough_k = 0.1;
        for (int step = 0; step < most_steps; ++step) {
            double moved = next_k(spot, spot_k) - spot_k;
            // What leaves rises with temperature: steps swing, or shrink by the same share.
            const double share = moved_before != 0.0 ? moved / moved_before : 0.0;
            moved_before = moved;
            if (step > 1 && std::fabs(share) < 0.9) {
                moved /= 1.0 - share;
                moved_before = 0.0;
            }
            spot_k = std::max(base_k, spot_k + moved);
            if (std::fabs(moved) < close_enough_k) break;
        }
        hottest = std::max(hottest, spot_k);
    }
    return std::min(hottest, std::max(at.base.sheath_k, air_k));
}

/// Nearness of all legs to a point across them, at least `deep_m` away: tells the hottest of spots.
double nearness(std::span<const LegSegment> legs, double x_m, double y_m, double z_m,
                double deep_m) {
    double sum = 0.0;
    for (const LegSegment& leg : legs) {
        const double across = leg.along_x ? leg.z_m - z_m : leg.x_m - x_m;
        sum +=
            1.0 / std::sqrt(across * across + (leg.y_m - y_m) * (leg.y_m - y_m) + deep_m * deep_m);
    }
    return sum;
}

/// The spot of a level face that legs are nearest to: beside one of them, or amid all.
SurfaceSpot level_spot(std::span<const LegSegment> legs, double z_m, double length_m) {
    const bool lid = z_m > 0.0;
    SurfaceSpot amid{.z_m = z_m, .normal_z = lid ? -1.0 : 1.0};
    const auto count = static_cast<double>(legs.size());
    for (const LegSegment& leg : legs) {
        amid.x_m += (leg.x_m + (leg.along_x ? 0.5 * length_m : 0.0)) / count;
        amid.y_m += leg.y_m / count;
    }
    SurfaceSpot hottest = amid;
    double most = 0.0;
    for (std::size_t i = 0; i <= legs.size(); ++i) {
        SurfaceSpot spot = amid;
        if (i < legs.size()) {
            spot.x_m = legs[i].x_m + (legs[i].along_x ? 0.5 * length_m : 0.0);
            spot.y_m = legs[i].y_m;
        }
        const LegSegment& any = legs[std::min(i, legs.size() - 1)];
        const double end_m = any.z_m + (any.along_x || !lid ? 0.0 : length_m);
        const double deep_m = any.along_x ? 0.0 : std::max(1e-3, std::fabs(z_m - end_m));
        const double near = nearness(legs, spot.x_m, spot.y_m, z_m, deep_m);
        if (near <= most) continue;
        most = near;
        hottest = spot;
    }
    return hottest;
}

/// The spot of a round wall that upright legs are nearest to: beside one of them, or between two.
SurfaceSpot upright_wall_spot(std::span<const LegSegment> legs, double radius_m, double length_m) {
    constexpr std::size_t most_pairs = 16;
    SurfaceSpot hottest{};
    double most = 0.0;
    const auto look = [&](double x, double y) {
        const double out_m = std::hypot(x, y);
        const double to_x = out_m > 0.0 ? x / out_m : 1.0;
        const double to_y = out_m > 0.0 ? y / out_m : 0.0;
        double wall_m = radius_m;
        for (const LegSegment& leg : legs) wall_m = std::max(wall_m, std::hypot(leg.x_m, leg.y_m));
        const double near = nearness(legs, to_x * wall_m, to_y * wall_m, 0.0, 1e-3);
        if (near <= most) return;
        most = near;
        hottest = {.x_m = to_x * wall_m,
                   .y_m = to_y * wall_m,
                   .z_m = legs.front().z_m + 0.5 * length_m,
                   .normal_x = -to_x,
                   .normal_y = -to_y};
    };
    for (std::size_t i = 0; i < legs.size(); ++i) {
        look(legs[i].x_m, legs[i].y_m);
        for (std::size_t j = i + 1; j < legs.size() && legs.size() <= most_pairs; ++j) {
            look(legs[i].x_m + legs[j].x_m, legs[i].y_m + legs[j].y_m);
        }
    }
    return hottest;
}

/// Spots of the wall at the ends of lying legs and beside them. A box counts as wide as it is
/// narrow, unless a leg fits along its longer side only. Legs aside may be so towards an end.
std::vector<SurfaceSpot> lying_wall_spots(std::span<const LegSegment> legs, const StoreShell& shell,
                                          double length_m, double aside_m) {
    SurfaceSpot end{};
    SurfaceSpot side{};
    double most = 0.0;
    double outermost_m = -1.0;
    const double radius_m = shell.radius_m;
    for (const LegSegment& leg : legs) {
        const bool by_width = !shell.round && length_m <= 2.0 * radius_m;
        const double half_m =
            shell.round ? std::sqrt(std::max(0.0, radius_m * radius_m - leg.y_m * leg.y_m))
                        : (by_width ? radius_m : 0.5 * shell.length_m);
        const double end_m = std::max(half_m - aside_m, 0.5 * length_m);
        const double near =
            nearness(legs, 0.0, leg.y_m, leg.z_m, std::max(1e-3, end_m - 0.5 * length_m));
        if (near > most) {
            most = near;
            end = {.x_m = end_m, .y_m = leg.y_m, .z_m = leg.z_m, .normal_x = -1.0};
        }
        if (std::fabs(leg.y_m) <= outermost_m) continue;
        outermost_m = std::fabs(leg.y_m);
        const double to = leg.y_m < 0.0 ? -1.0 : 1.0;
        side = {.y_m = to * std::max(radius_m, outermost_m), .z_m = leg.z_m, .normal_y = -to};
    }
    return {end, side};
}

}  // namespace

StoreSpots store_spots(const BedCharge& charge, const SpotBase& base, double power_w) {
    const StoreShell& shell = charge.shell;
    const double air_k = charge.air_c + zero_celsius_k;
    const double length_m = charge.legs.leg_length_m;
    const SpotCase at{.charge = charge,
                      .base = base,
                      .legs = leg_segments(charge.legs, shell),
                      .w_per_m = power_w / charge.legs.heated_length_m()};
    const std::vector<SurfaceSpot> beside =
        charge.legs.lies
            ? lying_wall_spots(at.legs, shell, length_m, charge.legs.aside_m)
            : std::vector<SurfaceSpot>{upright_wall_spot(at.legs, shell.radius_m, length_m)};
    const SurfaceSpot lid = level_spot(at.legs, shell.height_m, length_m);
    const SurfaceSpot floor = level_spot(at.legs, 0.0, length_m);
    return {.wall_k = hottest_spot_k(at, beside, wall_fit,
                                     [&](double k) { return shell.side_w_m2k(k, air_k); }),
            .lid_k =
                hottest_spot_k(at, {&lid, 1}, level_fit, [&](double) { return shell.top_u_w_m2k; }),
            .floor_k = hottest_spot_k(at, {&floor, 1}, level_fit,
                                      [&](double) { return shell.floor_u_w_m2k(); })};
}

}  // namespace heatmatch
