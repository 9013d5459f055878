#include "bed_3d.hpp"
#include "dice.hpp"
#include "figure.hpp"
#include "joint_drums.hpp"
#include "joint_pairs.hpp"
#include "long_run.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <sstream>
#include <string>

#include <doctest/doctest.h>

#include "heatmatch/heat/bed_field.hpp"

// Several circuits in one bed against solutions in three dimensions.
TEST_SUITE_BEGIN("numerical");

namespace {

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

// Source: the solver of bed_3d.hpp. Power changes after half of the time, each circuit's in its own
// way.
TEST_CASE("the field of a bed follows two circuits whose power changes") {
    Dice dice(20261201U);
    JointBand sheath;
    JointBand wall;
    const int count = in_the_long_run() ? 30 : 10;
    for (int i = 0; i < count; ++i) {
        const RandomPair pair = random_pair(dice, i);
        CAPTURE(i);
        const heatmatch::HeatedLegs& other = pair.charge.others.front();
        const double air_c = pair.charge.air_c;
        heatmatch::BedField field(pair.charge.fill, pair.charge.shell,
                                  std::vector<heatmatch::LegLayout>{pair.charge.legs, other.legs},
                                  air_c, air_c, {}, 0.0);
        const std::array<double, 2> first_w{pair.power_w, 0.5 * other.power_w};
        const std::array<double, 2> second_w{0.6 * pair.power_w, other.power_w};
        const double half_s = 0.5 * pair.charge.hours * 3600.0;
        field.step(first_w, half_s);
        field.step(second_w, half_s);
        Bed3dStore store = both_circuits(pair);
        Bed3d bed(store, {.near_m = pair.cell_m, .high_m = 0.03});
        bed.run(first_w, {pair.charge.legs.legs.size(), other.legs.legs.size()}, half_s);
        bed.run(second_w, {pair.charge.legs.legs.size(), other.legs.legs.size()}, half_s);
        const std::size_t own = pair.charge.legs.legs.size();
        sheath.add(field.sheath_c(0) - air_c, bed.sheath_c(0, own) - air_c);
        sheath.add(field.sheath_c(1) - air_c,
                   bed.sheath_c(own, own + other.legs.legs.size()) - air_c);
        wall.add(field.wall_c() - air_c, bed.wall_c() - air_c);
        CHECK(std::fabs(field.bed_mean_c() - bed.bed_mean_c()) < 2.0);
        const double supplied_kwh =
            (first_w[0] + first_w[1] + second_w[0] + second_w[1]) * half_s / 3.6e6;
        CHECK(field.supplied_kwh() == doctest::Approx(supplied_kwh).epsilon(1e-9));
        CHECK(field.stored_kwh() + field.lost_kwh() == doctest::Approx(supplied_kwh).epsilon(1e-6));
    }
    CHECK(sheath.least > -6.0);
    CHECK(sheath.most < 6.0);
    figure("two circuits, field of the bed: sheath ", sheath.text(), ", wall ", wall.text());
}

TEST_SUITE_END();
