#pragma once

#include "bed_3d.hpp"
#include "heat_beds.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>
#include <random>
#include <vector>

#include "heatmatch/heat/bed_charge.hpp"

/// A random store, from a 12 L pot to a 220 L drum of dry sand with 1, 2 or 4 legs. By the closed
/// form its power raises the sheath by 150 to 700 K in five hours: the range in which sheaths fail.
struct RandomStore {
    heatmatch::BedCharge charge{};
    int legs = 1;
    double litres = 0.0;
    double power_w = 0.0;
};

inline std::vector<RandomStore> random_stores(int count, std::uint32_t seed) {
    std::mt19937 engine(seed);
    // std::uniform_real_distribution gives other numbers with another standard library.
    const auto between = [&engine](double low, double high) {
        return low + (high - low) * static_cast<double>(engine()) / 4294967296.0;
    };
    std::vector<RandomStore> stores;
    for (int i = 0; i < count; ++i) {
        RandomStore store;
        store.legs = 1 << (i % 3);
        store.litres = 12.0 * std::exp(between(0.0, std::log(220.0 / 12.0)));
        const double slender = between(0.9, 1.6);
        const double diameter_m =
            std::cbrt(store.litres / 1000.0 / (std::numbers::pi / 4.0 * slender));
        const double height_m = slender * diameter_m;
        const double length_m = height_m * between(0.5, 0.85);
        const double spacing_m = std::min(between(0.04, 0.09), 0.7 * (0.5 * diameter_m - 0.04));
        store.charge = {.fill = dry_sand(between(0.20, 0.35), between(0.2, 1.0)),
                        .shell = bare_cylinder(diameter_m, height_m, between(0.3, 0.9)),
                        .legs = upright_legs(store.legs, length_m, spacing_m),
                        .air_c = between(-5.0, 25.0),
                        .hours = 5.0};
        store.power_w = heatmatch::largest_power_w(store.charge,
                                                   store.charge.air_c + between(150.0, 700.0), 1.0);
        stores.push_back(store);
    }
    return stores;
}

/// The same store, with air temperature at the start.
inline Bed3dStore in_three_dimensions(const heatmatch::BedCharge& charge) {
    return {.fill = charge.fill,
            .shell = charge.shell,
            .legs = charge.legs,
            .air_c = charge.air_c,
            .start_c = charge.air_c};
}
