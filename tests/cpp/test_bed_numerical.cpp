#include "bed_3d.hpp"
#include "error_spread.hpp"
#include "heat_beds.hpp"
#include "random_stores.hpp"

#include <cmath>
#include <string>
#include <vector>

#include <doctest/doctest.h>

// The closed form against a solution in three dimensions. Both take k(T), cp(T) and the wall's law
// from the library: this says nothing about those, only about the shape of the closed form.
TEST_SUITE_BEGIN("numerical");

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
        Bed3d bed({.fill = charge.fill,
                   .shell = charge.shell,
                   .legs = charge.legs,
                   .air_c = row.air_c,
                   .start_c = row.air_c});
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
        Bed3d bed({.fill = charge.fill,
                   .shell = charge.shell,
                   .legs = charge.legs,
                   .air_c = charge.air_c,
                   .start_c = charge.air_c});
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
            CHECK(std::fabs(error) < 12.0);
        }
    }
    for (std::size_t i = 0; i < times_h.size(); ++i) {
        MESSAGE("after " << times_h[i] << " h, sheath's rise: " << sheath[i].text("%"));
        MESSAGE("after " << times_h[i] << " h, hottest spot of the wall: " << wall[i].text("K"));
        MESSAGE("after " << times_h[i] << " h, bed mean: " << mean[i].text("K"));
        CHECK(sheath[i].rms() < 5.0);
    }
}

TEST_SUITE_END();
