#include "bed_geometry.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

namespace {

LegBody body_of(const LegLayout& legs, const StoreShell& shell) {
    const double l = legs.leg_length_m;
    const double cube = 1.0 + 6.0 * shell.volume_m3 / (pi * l * l * l);
    const double square = std::cbrt(cube * cube);
    const double outer_m = 0.5 * l * std::sqrt(square - 1.0);
    return {.length_m = l, .outer_m = outer_m, .mean_m = outer_m * std::exp(-0.5)};
}

LegDistances distances_from(std::size_t index, const BedCharge& charge) {
    const LegLayout& own = charge.legs;
    const LegLayout::Leg& from = own.legs[index];
    const auto to_m = [&from](const LegLayout::Leg& leg, double least_m) {
        return std::max(std::hypot(leg.x_m - from.x_m, leg.y_m - from.y_m), least_m);
    };
    LegDistances distances{.own_m = {own.radius_m}};
    for (std::size_t i = 0; i < own.legs.size(); ++i) {
        if (i != index) distances.own_m.push_back(to_m(own.legs[i], own.radius_m));
    }
    for (const HeatedLegs& other : charge.others) {
        std::vector<double> apart_m;
        for (const LegLayout::Leg& leg : other.legs.legs) {
            apart_m.push_back(to_m(leg, std::max(own.radius_m, other.legs.radius_m)));
        }
        distances.others_m.push_back(std::move(apart_m));
    }
    return distances;
}

}  // namespace

double LegBody::form() const {
    return (std::asinh(0.5 * length_m / mean_m) - std::asinh(0.5 * length_m / outer_m)) /
           (2.0 * pi * length_m);
}

BedGeometry bed_geometry(const BedCharge& charge) {
    BedGeometry geometry{.body = body_of(charge.legs, charge.shell),
                         .heated_m = charge.legs.heated_length_m(),
                         .air_k = charge.air_c + zero_celsius_k,
                         .seconds = charge.hours * 3600.0,
                         .days = charge.days};
    if (charge.others.empty()) {
        geometry.distances.push_back({.own_m = charge.legs.distances_m()});
    } else {
        for (std::size_t i = 0; i < charge.legs.legs.size(); ++i) {
            geometry.distances.push_back(distances_from(i, charge));
        }
    }
    for (const HeatedLegs& other : charge.others) {
        geometry.other_bodies.push_back(body_of(other.legs, charge.shell));
    }
    geometry.surface_m = std::max(charge.legs.radius_m, charge.legs.sheath_radius_m + charge.gap_m);
    for (LegDistances& from : geometry.distances) from.own_m.front() = geometry.surface_m;
    return geometry;
}

double concentration_of(const BedCharge& charge, double power_w) {
    if (charge.others.empty()) {
        return charge.wall_concentration ? *charge.wall_concentration
                                         : charge.legs.wall_concentration(charge.shell);
    }
    std::vector<HeatedLegs> all = charge.others;
    for (HeatedLegs& other : all) other.power_w = other.mean_w();
    all.push_back({.legs = charge.legs, .power_w = power_w});
    // Where their place is not stated, all are moved together towards the wall.
    if (charge.legs.unstated.aside) {
        double to_wall_m = charge.shell.radius_m;
        for (const HeatedLegs& each : all) {
            to_wall_m = std::min(to_wall_m, each.legs.farthest_aside_m(charge.shell));
        }
        for (HeatedLegs& each : all) {
            for (LegLayout::Leg& leg : each.legs.legs) leg.x_m += to_wall_m;
        }
    }
    return joint_wall_concentration(all, charge.shell);
}

}  // namespace heatmatch
