#include "bed_3d.hpp"
#include "error_spread.hpp"
#include "heat_beds.hpp"
#include "random_stores.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/heat/bed_shells.hpp"

// The closed form against a solution in three dimensions. Both take k(T), cp(T) and the wall's law
// from the library: this says nothing about those, only about the shape of the closed form.
TEST_SUITE_BEGIN("numerical");

namespace {

Bed3dStore in_three_dimensions(const heatmatch::BedCharge& charge) {
    return {.fill = charge.fill,
            .shell = charge.shell,
            .legs = charge.legs,
            .air_c = charge.air_c,
            .start_c = charge.air_c};
}

}  // namespace

// Source: a 3-D finite volume solution (consistency, not measurement) made apart from both of
// these: sheath 8 mm, wall 0.3, lid 3 and floor 4 W/m2K, 1550 kg/m3.
TEST_CASE("solver and closed form meet three sheath temperatures of an earlier solver") {
    struct Row {
        std::string name;
        int legs;
        double diameter_m, height_m, length_m, spacing_m, power_w, air_c, k20, grain_mm, hours;
        double sheath_c;
    };
    const std::vector<Row> rows = {
        {"drum_2leg_4h", 2, 0.40, 0.45, 0.30, 0.06, 180.0, 5.0, 0.27, 0.5, 4.0, 522.0},
        {"drum_1leg_6h", 1, 0.58, 0.60, 0.40, 0.00, 150.0, 0.0, 0.27, 0.5, 6.0, 587.0},
        {"bucket_2leg_2h", 2, 0.34, 0.30, 0.24, 0.06, 110.0, 8.0, 0.35, 0.8, 2.0, 305.0}};
    for (const Row& row : rows) {
        const heatmatch::BedCharge charge{
            .fill = dry_sand(row.k20, row.grain_mm),
            .shell = bare_cylinder(row.diameter_m, row.height_m, 0.3),
            .legs = upright_legs(row.legs, row.length_m, row.spacing_m),
            .air_c = row.air_c,
            .hours = row.hours};
        Bed3d bed(in_three_dimensions(charge));
        bed.run(row.power_w, row.hours * 3600.0);
        const double closed_c = bed_temperatures(charge, row.power_w).sheath_c;
        const double rise_k = row.sheath_c - row.air_c;
        MESSAGE(row.name << ": " << row.sheath_c << " C; here in three dimensions "
                         << bed.sheath_c() << " C ("
                         << 100.0 * (bed.sheath_c() - row.sheath_c) / rise_k
                         << " % of the rise), closed form " << closed_c << " C ("
                         << 100.0 * (closed_c - row.sheath_c) / rise_k << " %)");
        CHECK(std::fabs(bed.sheath_c() - row.sheath_c) < 0.08 * rise_k);
        CHECK(std::fabs(closed_c - row.sheath_c) < 0.08 * rise_k);
    }
}

// Source: the solver of bed_3d.hpp, measured against exact solutions in test_bed_3d.cpp.
TEST_CASE("the closed form's sheath stays near the solution in three dimensions, 1 to 8 hours") {
    const std::vector<double> times_h = {1.0, 3.0, 5.0, 8.0};
    std::vector<ErrorSpread> sheath(times_h.size());
    std::vector<ErrorSpread> wall(times_h.size());
    std::vector<ErrorSpread> mean(times_h.size());
    for (const RandomStore& store : random_stores(90, 20240607U)) {
        heatmatch::BedCharge charge = store.charge;
        Bed3d bed(in_three_dimensions(charge));
        double before_h = 0.0;
        for (std::size_t i = 0; i < times_h.size(); ++i) {
            bed.run(store.power_w, (times_h[i] - before_h) * 3600.0);
            before_h = times_h[i];
            charge.hours = times_h[i];
            const heatmatch::BedTemperatures closed = bed_temperatures(charge, store.power_w);
            const double rise_k = bed.sheath_c() - charge.air_c;
            const double error = 100.0 * (closed.sheath_c - bed.sheath_c()) / rise_k;
            sheath[i].add(error, store.legs);
            wall[i].add(closed.wall_c - bed.wall_c(), store.legs);
            mean[i].add(closed.bed_mean_c - bed.bed_mean_c(), store.legs);
            CAPTURE(store.legs);
            CAPTURE(store.litres);
            CAPTURE(store.power_w);
            CAPTURE(times_h[i]);
            CHECK(std::fabs(error) < 9.0);
        }
    }
    for (std::size_t i = 0; i < times_h.size(); ++i) {
        MESSAGE("after " << times_h[i] << " h, sheath's rise: " << sheath[i].text("%"));
        MESSAGE("after " << times_h[i] << " h, hottest spot of the wall: " << wall[i].text("K"));
        MESSAGE("after " << times_h[i] << " h, bed mean: " << mean[i].text("K"));
        CHECK(sheath[i].rms() < 3.0);
        CHECK(wall[i].smallest() > -12.0);  // a touch is judged hot, or nearly so
    }
}

// Source: the solver of bed_3d.hpp.
TEST_CASE("the shells' sheath stays near the solution in three dimensions, 1 to 8 hours") {
    const std::vector<double> times_h = {1.0, 3.0, 5.0, 8.0};
    std::vector<ErrorSpread> sheath(times_h.size());
    std::vector<ErrorSpread> wall(times_h.size());
    std::vector<ErrorSpread> mean(times_h.size());
    for (const RandomStore& store : random_stores(45, 20240608U)) {
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
        MESSAGE("shells after " << times_h[i] << " h, sheath's rise: " << sheath[i].text("%"));
        MESSAGE("shells after " << times_h[i] << " h, wall's hottest: " << wall[i].text("K"));
        MESSAGE("shells after " << times_h[i] << " h, bed mean: " << mean[i].text("K"));
        CHECK(sheath[i].smallest() > -10.0);
        CHECK(sheath[i].largest() < 10.0);
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
        MESSAGE(legs << " leg(s), a day of sun: hottest sheath " << hottest_c
                     << " C, shells within " << worst_k << " K all day; most stored " << most_kwh
                     << " kWh, shells within " << worst_kwh << " kWh");
        CHECK(worst_k < 0.10 * (hottest_c - 5.0));
        CHECK(worst_kwh < 0.10 * most_kwh);
    }
}

// Source: the solver of bed_3d.hpp.
TEST_CASE("many legs spread through a drum, in the closed form and in shells") {
    // Two rows of four, 90 mm apart: the outermost 150 mm from the axis.
    heatmatch::LegLayout eight{.leg_length_m = 0.5, .radius_m = 0.004, .sheath_radius_m = 0.004};
    for (const double x_m : {-0.135, -0.045, 0.045, 0.135}) {
        for (const double y_m : {-0.045, 0.045}) eight.legs.push_back({.x_m = x_m, .y_m = y_m});
    }
    for (const heatmatch::LegLayout& legs : {upright_legs(4, 0.50, 0.20), eight}) {
        heatmatch::BedCharge charge{.fill = dry_sand(0.27, 0.5),
                                    .shell = bare_cylinder(0.58, 0.80),
                                    .legs = legs,
                                    .air_c = 5.0};
        const double power_w = 120.0 * static_cast<double>(legs.legs.size());
        Bed3d bed(in_three_dimensions(charge));
        heatmatch::BedShells shells(charge.fill, charge.shell, charge.legs, 5.0, 5.0);
        double before_h = 0.0;
        for (const double hours : {1.0, 4.0, 8.0, 14.0, 24.0}) {
            bed.run(power_w, (hours - before_h) * 3600.0);
            shells.step(power_w, (hours - before_h) * 3600.0);
            before_h = hours;
            charge.hours = hours;
            const double closed_c = bed_temperatures(charge, power_w).sheath_c;
            const double rise_k = bed.sheath_c() - 5.0;
            const double error = 100.0 * (shells.sheath_c() - bed.sheath_c()) / rise_k;
            const double closed_error = 100.0 * (closed_c - bed.sheath_c()) / rise_k;
            MESSAGE(legs.legs.size()
                    << " spread legs after " << hours << " h: " << bed.sheath_c()
                    << " C, closed form off by " << closed_error << " %, shells " << error << " %");
            CHECK(std::fabs(closed_error) < 9.0);
            CHECK(std::fabs(error) < 100.0);
        }
    }
}

TEST_SUITE_END();
