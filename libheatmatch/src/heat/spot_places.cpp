#include "spot_places.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace heatmatch {

namespace {

/// Proximity of all legs to a point in their cross-section, to find the hottest spot; `deep_m`
/// gives the depth of a leg behind that section.
template <class Depth>
double nearness(std::span<const LegSegment> legs, double x_m, double y_m, double z_m,
                const Depth& deep_m) {
    double sum = 0.0;
    for (const LegSegment& leg : legs) {
        const double across = leg.along_x ? leg.z_m - z_m : leg.x_m - x_m;
        const double deep = deep_m(leg);
        sum += leg.share /
               std::sqrt(across * across + (leg.y_m - y_m) * (leg.y_m - y_m) + deep * deep);
    }
    return sum;
}

}  // namespace

SurfaceSpot level_spot(std::span<const LegSegment> legs, double z_m) {
    const bool lid = z_m > 0.0;
    SurfaceSpot amid{.z_m = z_m, .normal_z = lid ? -1.0 : 1.0};
    double shares = 0.0;
    for (const LegSegment& leg : legs) shares += leg.share;
    for (const LegSegment& leg : legs) {
        const double share = leg.share / shares;
        amid.x_m += (leg.x_m + (leg.along_x ? 0.5 * leg.length_m : 0.0)) * share;
        amid.y_m += leg.y_m * share;
    }
    const auto deep_m = [&](const LegSegment& leg) {
        const double end_m = leg.z_m + (leg.along_x || !lid ? 0.0 : leg.length_m);
        return leg.along_x ? 0.0 : std::max(1e-3, std::fabs(z_m - end_m));
    };
    SurfaceSpot hottest = amid;
    double most = 0.0;
    for (std::size_t i = 0; i <= legs.size(); ++i) {
        SurfaceSpot spot = amid;
        if (i < legs.size()) {
            spot.x_m = legs[i].x_m + (legs[i].along_x ? 0.5 * legs[i].length_m : 0.0);
            spot.y_m = legs[i].y_m;
        }
        const double near = nearness(legs, spot.x_m, spot.y_m, z_m, deep_m);
        if (near <= most) continue;
        most = near;
        hottest = spot;
    }
    return hottest;
}

SurfaceSpot upright_wall_spot(std::span<const LegSegment> legs, double radius_m) {
    constexpr std::size_t most_pairs = 16;
    SurfaceSpot hottest{};
    double most = 0.0;
    const auto look = [&](double x, double y, const LegSegment& beside) {
        const double out_m = std::sqrt(x * x + y * y);
        const double to_x = out_m > 0.0 ? x / out_m : 1.0;
        const double to_y = out_m > 0.0 ? y / out_m : 0.0;
        double wall_m = radius_m;
        for (const LegSegment& leg : legs) wall_m = std::max(wall_m, std::hypot(leg.x_m, leg.y_m));
        const double near = nearness(legs, to_x * wall_m, to_y * wall_m, 0.0,
                                     [](const LegSegment&) { return 1e-3; });
        if (near <= most) return;
        most = near;
        hottest = {.x_m = to_x * wall_m,
                   .y_m = to_y * wall_m,
                   .z_m = beside.z_m + 0.5 * beside.length_m,
                   .normal_x = -to_x,
                   .normal_y = -to_y};
    };
    for (std::size_t i = 0; i < legs.size(); ++i) {
        look(legs[i].x_m, legs[i].y_m, legs[i]);
        for (std::size_t j = i + 1; j < legs.size() && legs.size() <= most_pairs; ++j) {
            look(legs[i].x_m + legs[j].x_m, legs[i].y_m + legs[j].y_m, legs[i]);
        }
    }
    return hottest;
}

std::vector<SurfaceSpot> lying_wall_spots(std::span<const LegSegment> legs, const StoreShell& shell,
                                          double aside_m) {
    SurfaceSpot end{};
    SurfaceSpot side{};
    double most = 0.0;
    double outermost_m = -1.0;
    const double radius_m = shell.radius_m;
    for (const LegSegment& leg : legs) {
        const double length_m = leg.length_m;
        const bool by_width = !shell.round && length_m <= 2.0 * radius_m;
        const double half_m =
            shell.round ? std::sqrt(std::max(0.0, radius_m * radius_m - leg.y_m * leg.y_m))
                        : (by_width ? radius_m : 0.5 * shell.length_m);
        const double end_m = std::max(half_m - aside_m, 0.5 * length_m);
        const double near = nearness(legs, 0.0, leg.y_m, leg.z_m, [&](const LegSegment& other) {
            return std::max(1e-3, end_m - 0.5 * other.length_m);
        });
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

}  // namespace heatmatch
