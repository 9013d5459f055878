#pragma once

#include "bed_3d.hpp"
#include "dice.hpp"
#include "heat_beds.hpp"

#include <utility>
#include <vector>

#include "heatmatch/heat/bed_charge.hpp"

/// Two circuits, each mirrored at both axes, as the quarter of three dimensions needs.
struct RandomPair {
    heatmatch::BedCharge charge{};
    double power_w = 0.0;
    double cell_m = 0.0;  //!< legs are whole multiples of it from the axes
};

inline heatmatch::LegLayout mirrored_legs(std::vector<heatmatch::LegLayout::Leg> legs,
                                          double length_m, double radius_m) {
    return {.legs = std::move(legs),
            .leg_length_m = length_m,
            .radius_m = radius_m,
            .sheath_radius_m = radius_m};
}

inline RandomPair random_pair(Dice& dice, int i) {
    const double diameter_m = dice.between(0.35, 0.6);
    const double height_m = diameter_m * dice.between(0.8, 1.5);
    const double length_m = height_m * dice.between(0.55, 0.8);
    const double radius_m = dice.between(0.004, 0.006);
    const double cell_m = dice.between(0.010, 0.013);
    const int inner_cells = dice.from(2, 3);
    const double inner_m = inner_cells * cell_m;
    const double outer_m = (inner_cells + dice.from(3, 5)) * cell_m;
    std::vector<heatmatch::LegLayout::Leg> inner;
    if (i % 3 == 0) {
        inner = {{0.0, 0.0}};
    } else if (i % 3 == 1) {
        inner = {{0.0, inner_m}, {0.0, -inner_m}};
    } else {
        inner = {
            {inner_m, inner_m}, {-inner_m, inner_m}, {inner_m, -inner_m}, {-inner_m, -inner_m}};
    }
    std::vector<heatmatch::LegLayout::Leg> outer;
    if (i % 2 == 0) {
        outer = {{outer_m, 0.0}, {-outer_m, 0.0}};
    } else {
        const double beside_m = dice.from(2, 3) * cell_m;
        outer = {
            {outer_m, beside_m}, {-outer_m, beside_m}, {outer_m, -beside_m}, {-outer_m, -beside_m}};
    }
    heatmatch::BedCharge charge{.fill = dry_sand(dice.between(0.2, 0.35), 0.5),
                                .shell = bare_cylinder(diameter_m, height_m, 0.3),
                                .legs = mirrored_legs(std::move(inner), length_m, radius_m),
                                .air_c = dice.between(-5.0, 25.0),
                                .hours = dice.between(2.0, 8.0)};
    charge.shell.stands_u_w_m2k = charge.shell.bottom_u_w_m2k;  // floor_c() is of the fill
    const heatmatch::LegLayout around = mirrored_legs(std::move(outer), length_m, radius_m);
    heatmatch::BedCharge alone = charge;
    alone.legs = around;
    const double hottest_c = charge.air_c + dice.between(150.0, 450.0);
    charge.others = {
        {.legs = around,
         .power_w = dice.between(0.1, 1.0) * heatmatch::largest_power_w(alone, hottest_c, 1.0)}};
    RandomPair pair{.charge = charge, .cell_m = cell_m};
    heatmatch::BedCharge without = charge;
    without.others.clear();
    pair.power_w = dice.between(0.1, 1.0) * heatmatch::largest_power_w(without, hottest_c, 1.0);
    return pair;
}

inline Bed3dStore both_circuits(const RandomPair& pair) {
    Bed3dStore store{.fill = pair.charge.fill,
                     .shell = pair.charge.shell,
                     .legs = pair.charge.legs,
                     .air_c = pair.charge.air_c,
                     .start_c = pair.charge.air_c};
    const heatmatch::HeatedLegs& other = pair.charge.others.front();
    store.legs.legs.insert(store.legs.legs.end(), other.legs.legs.begin(), other.legs.legs.end());
    const double mean_w =
        (pair.power_w + other.power_w) / static_cast<double>(store.legs.legs.size());
    store.weights.assign(pair.charge.legs.legs.size(),
                         pair.power_w / static_cast<double>(pair.charge.legs.legs.size()) / mean_w);
    store.weights.resize(store.legs.legs.size(),
                         other.power_w / static_cast<double>(other.legs.legs.size()) / mean_w);
    return store;
}
