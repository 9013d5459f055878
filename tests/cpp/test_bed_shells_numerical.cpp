#include "bed_3d.hpp"
#include "error_spread.hpp"
#include "heat_beds.hpp"
#include "random_stores.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/heat/bed_shells.hpp"

// The bed of shells against a solution in three dimensions.
TEST_SUITE_BEGIN("numerical");

// Source: the solver of bed_3d.hpp.
TEST_CASE("the shells' sheath stays near the solution in three dimensions, 1 to 8 hours") {
    const std::vector<double> times_h = {1.0, 3.0, 5.0, 8.0};
    std::vector<ErrorSpread> sheath(times_h.size());
    std::vector<ErrorSpread> wall(times_h.size());
    std::vector<ErrorSpread> mean(times_h.size());
    for (const RandomStore& store : random_stores(30, 20240608U)) {
        const heatmatch::BedCharge& charge = store.charge;
        Bed3d bed(in_three_dimensions(charge));
        heatmatch::BedShells shells(charge.fill, charge.shell, charge.legs, charge.air_c,
                                    charge.air_c);
        double before_h = 0.0;
        for (std::size_t i = 0; i < times_h.size(); ++i) {
            const double seconds = (times_h[i] - before_h) * 3600.0;
            before_h = times_h[i];
            bed.run(store.power_w, seconds);
            shells.step(store.power_w, seconds);
            const double rise_k = bed.sheath_c() - charge.air_c;
            const double error = 100.0 * (shells.sheath_c() - bed.sheath_c()) / rise_k;
            sheath[i].add(error, store.legs);
            wall[i].add(shells.wall_c() - bed.wall_c(), store.legs);
            mean[i].add(shells.bed_mean_c() - bed.bed_mean_c(), store.legs);
        }
    }
    for (std::size_t i = 0; i < times_h.size(); ++i) {
        CHECK(sheath[i].smallest() > -10.0);
        CHECK(sheath[i].largest() < 10.0);
        // Eight shells around one axis: the wall beside a leg far out is judged off by up to 6.5 K.
        CHECK(wall[i].smallest() > -10.0);
        CHECK(wall[i].largest() < 10.0);
        CHECK(mean[i].smallest() > -1.0);
        CHECK(mean[i].rms() < 4.0);
    }
}

// Source: the solver of bed_3d.hpp.
TEST_CASE("the shells follow a day's sun and the night after as three dimensions do") {
    for (const int legs : {1, 2, 4}) {
        const heatmatch::BedCharge charge{.fill = dry_sand(0.27, 0.5),
                                          .shell = bare_cylinder(0.34, 0.40),
                                          .legs = upright_legs(legs, 0.28, 0.06),
                                          .air_c = 5.0};
        Bed3d bed(in_three_dimensions(charge), {.longest_step_s = 300.0});
        heatmatch::BedShells shells(charge.fill, charge.shell, charge.legs, 5.0, 5.0);
        double worst_k = 0.0;
        double hottest_c = 0.0;
        double most_kwh = 0.0;
        double worst_kwh = 0.0;
        for (int half_hour = 0; half_hour < 48; ++half_hour) {
            const double hours = 0.5 * half_hour + 0.25;
            const double share = std::max(0.0, std::sin(std::numbers::pi * hours / 10.0));
            const double power_w = hours < 10.0 ? 110.0 * legs * share : 0.0;
            bed.run(power_w, 1800.0);
            shells.step(power_w, 1800.0);
            worst_k = std::max(worst_k, std::fabs(shells.sheath_c() - bed.sheath_c()));
            hottest_c = std::max(hottest_c, bed.sheath_c());
            const double stored_kwh = bed.stored_j() / 3.6e6;
            most_kwh = std::max(most_kwh, stored_kwh);
            worst_kwh = std::max(worst_kwh, std::fabs(shells.stored_kwh() - stored_kwh));
        }
        CHECK(worst_k < 0.10 * (hottest_c - 5.0));
        CHECK(worst_kwh < 0.10 * most_kwh);
    }
}

TEST_SUITE_END();
