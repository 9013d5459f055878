#include "bed_3d.hpp"
#include "dice.hpp"
#include "heat/hot_spots.hpp"
#include "heat_beds.hpp"
#include "long_run.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <fstream>
#include <numbers>
#include <sstream>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/heat/bed_charge.hpp"

using heatmatch::LegSegment;
using heatmatch::SpotForm;

namespace {

constexpr double pi = std::numbers::pi;

}  // namespace

// Source: a point under a half-space that lets nothing through has twice its free potential, and a
// line of it adds up to ln((h + L)/h)/(2 pi) over its tip (Carslaw & Jaeger, section 10.4).
TEST_CASE("the mirror of a long warmed leg stands over its tip as a logarithm") {
    const LegSegment leg{.z_m = 0.05};
    const SpotForm form({&leg, 1}, {.normal_z = 1.0},
                        {.length_m = 0.4, .radius_m = 1e-4, .reach_m = 1e4});
    CHECK(form.at({}) == doctest::Approx(std::log(9.0) / (2.0 * pi)).epsilon(0.002));
}

// Source: a line deep under a surface held at the air's gives it q'/(pi h) per metre (Carslaw &
// Jaeger, section 10.4): over a large U the rise is that heat by U.
TEST_CASE("a lying leg warms a surface that takes all by its heat over U") {
    const LegSegment leg{.x_m = -5.0, .z_m = 0.05, .along_x = true};
    const double per_m = 1e4;
    const SpotForm form({&leg, 1}, {.normal_z = 1.0},
                        {.length_m = 10.0, .radius_m = 0.004, .reach_m = 1e5});
    CHECK(form.at({.u_over_k_m = per_m}) * per_m ==
          doctest::Approx(1.0 / (pi * 0.05)).epsilon(0.05));
}

TEST_CASE("a skin, a taking surface, depth and less time all leave a spot colder") {
    const auto at = [&](double low_m, double reach_m, const heatmatch::SpotLeaves& leaves) {
        const LegSegment leg{.z_m = low_m};
        return SpotForm({&leg, 1}, {.normal_z = 1.0},
                        {.length_m = 0.3, .radius_m = 0.004, .reach_m = reach_m})
            .at(leaves);
    };
    const double plain = at(0.03, 0.3, {});
    CHECK(at(0.03, 0.3, {.skin_m = 0.12}) < 0.7 * plain);
    CHECK(at(0.03, 0.3, {.u_over_k_m = 10.0}) < plain);
    CHECK(at(0.03, 0.1, {}) < plain);
    CHECK(at(0.06, 0.3, {}) < plain);
}

TEST_SUITE_BEGIN("numerical");

// Source: tests/cpp/bed_3d.hpp, in layouts that nothing was fitted to.
TEST_CASE("hot spots within -5 to +25 % of the rise in three dimensions") {
    Dice dice(71193);
    const int count = in_the_long_run() ? 60 : 26;
    std::array<double, 3> coldest{};
    std::array<double, 3> hottest{};
    std::array<int, 3> judged{};
    for (int i = 0; i < count; ++i) {
        const double diameter_m = dice.between(0.25, 0.55);
        const double height_m = diameter_m * dice.between(0.8, 1.5);
        const bool lies = i % 3 == 2;
        const int legs = lies ? 1 + i % 2 : 1 << (i % 3 + i % 2);
        const double spacing_m = std::min(0.07, 0.6 * (0.5 * diameter_m - 0.04));
        const double length_m = (lies ? diameter_m : height_m) * dice.between(0.4, 0.75);
        const double low_m = dice.between(0.025, 0.10);
        heatmatch::LegLayout layout = upright_legs(legs, length_m, spacing_m);
        constexpr double clear_m = 0.02;  // of the lid, by the cells of three dimensions
        if (i % 4 != 0) {
            layout.low_m = lies ? low_m : std::min(low_m, height_m - length_m - clear_m);
        }
        layout.lies = lies;
        heatmatch::StoreShell shell = bare_cylinder(diameter_m, height_m, dice.between(0.3, 0.9));
        shell.bottom_u_w_m2k = shell.stands_u_w_m2k = dice.between(1.0, 7.0);
        const heatmatch::BedCharge charge{.fill = dry_sand(dice.between(0.2, 0.35), 0.5),
                                          .shell = shell,
                                          .legs = layout,
                                          .air_c = 20.0,
                                          .hours = dice.between(3.0, 8.0)};
        const double power_w = heatmatch::largest_power_w(charge, dice.between(200.0, 600.0), 1.0);
        Bed3dStore store{.fill = charge.fill,
                         .shell = shell,
                         .legs = layout,
                         .low_m = layout.low_m,
                         .lies = lies};
        if (lies) {
            for (auto& leg : store.legs.legs) std::swap(leg.x_m, leg.y_m);
        }
        Bed3d bed(store, {.near_m = 0.012,
                          .high_m = std::min(0.014, layout.low_m.value_or(low_m) / 4.0 + 0.004)});
        bed.run(power_w, charge.hours * 3600.0);
        const heatmatch::BedTemperatures found = heatmatch::bed_temperatures(charge, power_w);
        // The lid's outer surface has as much of the rise as its insulation leaves it.
        const double lid_share = (shell.lid_surface_k(393.15, 293.15) - 293.15) / 100.0;
        const std::array<double, 3> exact_k{bed.floor_c() - 20.0, lid_share * (bed.lid_c() - 20.0),
                                            bed.wall_c() - 20.0};
        const std::array<double, 3> told_k{found.floor_c - 20.0, found.lid_c - 20.0,
                                           found.wall_c - 20.0};
        for (std::size_t face = 0; face < 3; ++face) {
            constexpr double least_k = 10.0;
            if (exact_k[face] < (face == 1 ? lid_share : 1.0) * least_k) continue;
            const double error = told_k[face] / exact_k[face] - 1.0;
            CAPTURE(i);
            CAPTURE(face);
            CAPTURE(exact_k[face]);
            CHECK(error > -0.05);
            CHECK(error < 0.25);
            ++judged[face];
            coldest[face] = std::min(coldest[face], error);
            hottest[face] = std::max(hottest[face], error);
        }
    }
    MESSAGE("floors " << 100.0 * coldest[0] << " to " << 100.0 * hottest[0] << " %, lids "
                      << 100.0 * coldest[1] << " to " << 100.0 * hottest[1] << " %, walls "
                      << 100.0 * coldest[2] << " to " << 100.0 * hottest[2]
                      << " % of the rise off in " << judged[0] << ", " << judged[1] << ", "
                      << judged[2] << " stores");
    CHECK(judged[0] >= 20);
    for (const int each : judged) CHECK(each >= count / 5);
}

TEST_SUITE_END();

// Source: tests/reference/joint_open.csv. Its circuits load their legs unlike; the floor must lie
// between the legs of one alone and all legs loaded as those of the hotter one.
TEST_CASE("floors and walls of drums by another solution lie between one circuit and two alike") {
    std::ifstream file(std::string(HEATMATCH_REFERENCE_DIR) + "/joint_open.csv");
    REQUIRE(file);
    std::string line;
    int drums = 0;
    while (std::getline(file, line)) {
        if (line.empty() || line.front() < '0' || line.front() > '9') continue;
        std::vector<double> v;
        for (char& c : line) {
            if (c == ',' || c == ':' || c == ';') c = ' ';
        }
        std::istringstream cells(line);
        for (double x = 0.0; cells >> x;) v.push_back(x);
        REQUIRE(v.size() == 22);
        ++drums;
        heatmatch::LegLayout one{.legs = {{.x_m = v[9] / 1e3, .y_m = v[10] / 1e3},
                                          {.x_m = v[11] / 1e3, .y_m = v[12] / 1e3}},
                                 .leg_length_m = v[3],
                                 .radius_m = v[4] / 2e3,
                                 .sheath_radius_m = v[4] / 2e3};
        heatmatch::LegLayout both = one;
        both.legs.push_back({.x_m = v[13] / 1e3, .y_m = v[14] / 1e3});
        both.legs.push_back({.x_m = v[15] / 1e3, .y_m = v[16] / 1e3});
        heatmatch::BedCharge charge{.fill = dry_sand(0.27, 0.5),
                                    .shell = bare_cylinder(v[1], v[2], 0.3),
                                    .legs = one,
                                    .air_c = v[5],
                                    .hours = v[6]};
        charge.shell.stands_u_w_m2k = 4.0;  // floor_inner_c is of the fill
        const double one_c = heatmatch::bed_temperatures(charge, v[7]).floor_c;
        charge.legs = both;
        const heatmatch::BedTemperatures all = heatmatch::bed_temperatures(charge, 2.0 * v[7]);
        CAPTURE(v[0]);
        constexpr double room_k = 1.5;
        const double floor_k = v[21] - v[5];
        CHECK(one_c - v[5] < 1.25 * floor_k + room_k);
        CHECK(all.floor_c - v[5] > 0.95 * floor_k - room_k);
        CHECK(all.wall_c - v[5] > 0.95 * (v[20] - v[5]) - room_k);
    }
    CHECK(drums == 16);
}
