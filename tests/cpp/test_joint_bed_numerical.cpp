#include "bed_3d.hpp"
#include "dice.hpp"
#include "figure.hpp"
#include "joint_drums.hpp"
#include "long_run.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <sstream>
#include <string>

#include <doctest/doctest.h>

// Several circuits in one bed against solutions in three dimensions.
TEST_SUITE_BEGIN("numerical");

namespace {

using heatmatch::LegLayout;
using heatmatch::verdict_factor;

/// Errors of rises, as shares of the exact ones [%].
struct JointBand {
    double least = std::numeric_limits<double>::infinity();
    double most = -std::numeric_limits<double>::infinity();
    int count = 0;

    void add(double ours_k, double exact_k) {
        constexpr double least_k = 10.0;  // a smaller rise is not judged
        if (exact_k < least_k) return;
        const double error = 100.0 * (ours_k / exact_k - 1.0);
        least = std::min(least, error);
        most = std::max(most, error);
        ++count;
    }
    [[nodiscard]] std::string text() const {
        std::ostringstream out;
        out << least << " to " << most << " % in " << count;
        return out.str();
    }
};

/// Two circuits, each mirrored at both axes, as the quarter of three dimensions needs.
struct RandomPair {
    heatmatch::BedCharge charge{};
    double power_w = 0.0;
    double cell_m = 0.0;  //!< legs are whole multiples of it from the axes
};

LegLayout mirrored_legs(std::vector<LegLayout::Leg> legs, double length_m, double radius_m) {
    return {.legs = std::move(legs),
            .leg_length_m = length_m,
            .radius_m = radius_m,
            .sheath_radius_m = radius_m};
}

RandomPair random_pair(Dice& dice, int i) {
    const double diameter_m = dice.between(0.35, 0.6);
    const double height_m = diameter_m * dice.between(0.8, 1.5);
    const double length_m = height_m * dice.between(0.55, 0.8);
    const double radius_m = dice.between(0.004, 0.006);
    const double cell_m = dice.between(0.010, 0.013);
    const int inner_cells = dice.from(2, 3);
    const double inner_m = inner_cells * cell_m;
    const double outer_m = (inner_cells + dice.from(3, 5)) * cell_m;
    std::vector<LegLayout::Leg> inner;
    if (i % 3 == 0) {
        inner = {{0.0, 0.0}};
    } else if (i % 3 == 1) {
        inner = {{0.0, inner_m}, {0.0, -inner_m}};
    } else {
        inner = {
            {inner_m, inner_m}, {-inner_m, inner_m}, {inner_m, -inner_m}, {-inner_m, -inner_m}};
    }
    std::vector<LegLayout::Leg> outer;
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
    const LegLayout around = mirrored_legs(std::move(outer), length_m, radius_m);
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

Bed3dStore both_circuits(const RandomPair& pair) {
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

}  // namespace

// Source: tests/reference/joint_open.csv, a solution in three dimensions made apart from this
// project (consistency, not measurement).
TEST_CASE("sheaths of two circuits in 16 drums agree with another solution") {
    JointBand sheath;
    JointBand wall;
    JointBand floor;
    int drums = 0;
    for (const JointDrum& drum : joint_drums()) {
        ++drums;
        CAPTURE(drums);
        const double air_c = drum.charge.air_c;
        const auto of_a = heatmatch::bed_temperatures(drum.charge, drum.power_w);
        const auto of_b = heatmatch::bed_temperatures(drum.of_b(), drum.power_b_w());
        const std::array<double, 2> ours_c{of_a.sheath_c, of_b.sheath_c};
        for (std::size_t i = 0; i < 2; ++i) {
            const double exact_k = drum.sheath_c[i] - air_c;
            sheath.add(ours_c[i] - air_c, exact_k);
            CAPTURE(ours_c[i]);
            CAPTURE(drum.sheath_c[i]);
            constexpr double rounding_k = 0.5;
            CHECK(verdict_factor * (ours_c[i] - air_c) > exact_k - rounding_k);
            CHECK(ours_c[i] - air_c < 1.15 * exact_k + rounding_k);
        }
        constexpr double room_k = 1.5;
        floor.add(of_a.floor_c - air_c, drum.floor_c - air_c);
        wall.add(of_a.wall_c - air_c, drum.wall_c - air_c);
        CHECK(of_a.floor_c - air_c > 0.95 * (drum.floor_c - air_c) - room_k);
        CHECK(of_a.floor_c - air_c < 1.25 * (drum.floor_c - air_c) + room_k);
        CHECK(of_a.wall_c - air_c > 0.95 * (drum.wall_c - air_c) - room_k);
        CHECK(std::fabs(of_a.bed_mean_c - drum.bed_mean_c) < 5.0);
        // What both see of the store is the same.
        CHECK(of_a.bed_mean_c == doctest::Approx(of_b.bed_mean_c).epsilon(1e-9));
        CHECK(of_a.wall_c == doctest::Approx(of_b.wall_c).epsilon(1e-6));
        CHECK(of_a.floor_c == doctest::Approx(of_b.floor_c).epsilon(1e-6));
    }
    CHECK(drums == 16);
    figure("two circuits, another solution: sheath ", sheath.text(), ", wall ", wall.text(),
           ", floor ", floor.text());
}

// Source: the solver of bed_3d.hpp, measured against exact solutions in test_bed_3d.cpp.
TEST_CASE("the verdict factor covers two circuits in random drums") {
    Dice dice(20261130U);
    JointBand sheath;
    JointBand wall;
    JointBand floor;
    const int count = in_the_long_run() ? 90 : 30;
    for (int i = 0; i < count; ++i) {
        const RandomPair pair = random_pair(dice, i);
        CAPTURE(i);
        Bed3d bed(both_circuits(pair), {.near_m = pair.cell_m, .high_m = 0.03});
        const heatmatch::HeatedLegs& other = pair.charge.others.front();
        bed.run(pair.power_w + other.power_w, pair.charge.hours * 3600.0);
        const double air_c = pair.charge.air_c;
        const std::size_t own = pair.charge.legs.legs.size();
        heatmatch::BedCharge of_b = pair.charge;
        of_b.legs = other.legs;
        of_b.others.front() = {.legs = pair.charge.legs, .power_w = pair.power_w};
        const auto seen_a = heatmatch::bed_temperatures(pair.charge, pair.power_w);
        const auto seen_b = heatmatch::bed_temperatures(of_b, other.power_w);
        const std::array<double, 2> ours_k{seen_a.sheath_c - air_c, seen_b.sheath_c - air_c};
        const std::array<double, 2> exact_k{
            bed.sheath_c(0, own) - air_c, bed.sheath_c(own, own + other.legs.legs.size()) - air_c};
        for (std::size_t k = 0; k < 2; ++k) {
            sheath.add(ours_k[k], exact_k[k]);
            CAPTURE(ours_k[k]);
            CAPTURE(exact_k[k]);
            CHECK(verdict_factor * ours_k[k] > exact_k[k]);
            CHECK(ours_k[k] < 1.15 * exact_k[k]);
        }
        wall.add(seen_a.wall_c - air_c, bed.wall_c() - air_c);
        floor.add(seen_a.floor_c - air_c, bed.floor_c() - air_c);
    }
    CHECK(sheath.count >= count);
    CHECK(wall.least > -6.0);
    CHECK(floor.least > -6.0);
    figure("two circuits, three dimensions: sheath ", sheath.text(), ", wall ", wall.text(),
           ", floor ", floor.text());
}

TEST_SUITE_END();
