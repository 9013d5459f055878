#include "bed_3d.hpp"
#include "dice.hpp"
#include "heat/hot_spots.hpp"
#include "heat_beds.hpp"
#include "long_run.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <doctest/doctest.h>

#include "heatmatch/heat/bed_charge.hpp"

using heatmatch::LegSegment;

namespace {

constexpr double pi = std::numbers::pi;

}  // namespace

// Source: a point under a half-space that lets nothing through has twice its free potential, and a
// line of it adds up to ln((h + L)/h)/(2 pi) over its tip (Carslaw & Jaeger, section 10.4).
TEST_CASE("the mirror of a long warmed leg stands over its tip as a logarithm") {
    const LegSegment leg{.z_m = 0.05};
    const double form = heatmatch::spot_form({&leg, 1}, {.normal_z = 1.0},
                                             {.length_m = 0.4, .radius_m = 1e-4, .reach_m = 1e4});
    CHECK(form == doctest::Approx(std::log(9.0) / (2.0 * pi)).epsilon(0.002));
}

// Source: a line deep under a surface held at the air's gives it q'/(pi h) per metre (Carslaw &
// Jaeger, section 10.4): over a large U the rise is that heat by U.
TEST_CASE("a lying leg warms a surface that takes all by its heat over U") {
    const LegSegment leg{.x_m = -5.0, .z_m = 0.05, .along_x = true};
    const double per_m = 1e4;
    const double form = heatmatch::spot_form(
        {&leg, 1}, {.normal_z = 1.0},
        {.length_m = 10.0, .radius_m = 0.004, .reach_m = 1e5, .u_over_k_m = per_m});
    CHECK(form * per_m == doctest::Approx(1.0 / (pi * 0.05)).epsilon(0.05));
}

TEST_CASE("a skin, a taking surface, depth and less time all leave a spot colder") {
    const LegSegment leg{.z_m = 0.03};
    const heatmatch::SpotPath path{.length_m = 0.3, .radius_m = 0.004, .reach_m = 0.3};
    const auto at = [&](const heatmatch::SpotPath& by) {
        return heatmatch::spot_form({&leg, 1}, {.normal_z = 1.0}, by);
    };
    heatmatch::SpotPath other = path;
    other.skin_m = 0.12;
    CHECK(at(other) < 0.7 * at(path));
    other = path;
    other.u_over_k_m = 10.0;
    CHECK(at(other) < at(path));
    other = path;
    other.reach_m = 0.1;
    CHECK(at(other) < at(path));
    const LegSegment deeper{.z_m = 0.06};
    CHECK(heatmatch::spot_form({&deeper, 1}, {.normal_z = 1.0}, path) < at(path));
}

TEST_SUITE_BEGIN("numerical");

// Source: tests/cpp/bed_3d.hpp, in layouts that nothing was fitted to.
TEST_CASE("floors under leg ends and lying legs within -10 to +35 % of three dimensions") {
    Dice dice(977);
    const int count = in_the_long_run() ? 40 : 8;
    double coldest = 0.0;
    double hottest = 0.0;
    int judged = 0;
    for (int i = 0; i < count; ++i) {
        const double diameter_m = dice.between(0.25, 0.55);
        const double height_m = diameter_m * dice.between(0.8, 1.5);
        const bool lies = i % 3 == 2;
        const int legs = lies ? 1 + i % 2 : 1 << (i % 3);
        const double spacing_m = std::min(0.07, 0.6 * (0.5 * diameter_m - 0.04));
        const double length_m = (lies ? diameter_m : height_m) * dice.between(0.4, 0.7);
        const double low_m = dice.between(0.025, 0.10);
        heatmatch::LegLayout layout = upright_legs(legs, length_m, spacing_m);
        layout.low_m = low_m;
        layout.lies = lies;
        heatmatch::StoreShell shell = bare_cylinder(diameter_m, height_m, dice.between(0.3, 0.9));
        shell.bottom_u_w_m2k = shell.stands_u_w_m2k = dice.between(1.0, 7.0);
        const heatmatch::BedCharge charge{.fill = dry_sand(dice.between(0.2, 0.35), 0.5),
                                          .shell = shell,
                                          .legs = layout,
                                          .air_c = 20.0,
                                          .hours = dice.between(3.0, 8.0)};
        const double power_w = heatmatch::largest_power_w(charge, dice.between(200.0, 600.0), 1.0);
        Bed3dStore store{
            .fill = charge.fill, .shell = shell, .legs = layout, .low_m = low_m, .lies = lies};
        if (lies) {
            for (auto& leg : store.legs.legs) std::swap(leg.x_m, leg.y_m);
        }
        Bed3d bed(store, {.near_m = 0.012, .high_m = std::min(0.014, low_m / 4.0 + 0.004)});
        bed.run(power_w, charge.hours * 3600.0);
        const double rise_k = bed.floor_c() - 20.0;
        const double error =
            (heatmatch::bed_temperatures(charge, power_w).floor_c - 20.0) / rise_k - 1.0;
        CAPTURE(i);
        CAPTURE(rise_k);
        CAPTURE(error);
        constexpr double least_k = 12.0;
        if (rise_k < least_k) continue;
        ++judged;
        coldest = std::min(coldest, error);
        hottest = std::max(hottest, error);
        CHECK(error > -0.10);
        CHECK(error < 0.35);
    }
    MESSAGE("floor of " << judged << " stores: " << 100.0 * coldest << " to " << 100.0 * hottest
                        << " % of the rise off");
    CHECK(judged >= count / 2);
}

TEST_SUITE_END();
