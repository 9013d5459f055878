#include "charged_drum.hpp"
#include "heat_beds.hpp"

#include <algorithm>
#include <cmath>

#include <doctest/doctest.h>

#include "heatmatch/heat/bed_field.hpp"

using heatmatch::BedField;

TEST_CASE(
    "in the end the loss of a field equals its power, and it cools to the air with the "
    "power off") {
    BedField bed = drum_field({.across = 6, .high = 8, .longest_step_s = 1800.0});
    bed.step(120.0, 400.0 * 3600.0);
    CHECK(bed.loss_w() == doctest::Approx(120.0).epsilon(1e-3));
    CHECK(bed.sheath_c() > bed.bed_mean_c());
    CHECK(bed.bed_mean_c() > bed.edge_c());
    CHECK(bed.wall_c() > bed.wall_mean_c());
    CHECK(bed.wall_mean_c() == doctest::Approx(bed.edge_c()));
    CHECK(bed.lid_c() > 20.0);
    // The fan takes its share of what now goes out.
    bed.set_extraction_w_k(0.5);
    CHECK(bed.extraction_w() == doctest::Approx(0.5 * (bed.bed_mean_c() - 20.0)));
    bed.step(120.0, 400.0 * 3600.0);
    CHECK(bed.loss_w() + bed.extraction_w() == doctest::Approx(120.0).epsilon(1e-3));
    bed.set_extraction_w_k(0.0);
    CHECK(bed.extraction_w() == 0.0);
    double before_c = bed.bed_mean_c();
    for (int day = 0; day < 6; ++day) {
        bed.step(0.0, 86400.0);
        CHECK(bed.bed_mean_c() < before_c);
        before_c = bed.bed_mean_c();
    }
    bed.step(0.0, 20.0 * 86400.0);
    CHECK(bed.sheath_c() == doctest::Approx(20.0).epsilon(1e-3));
    CHECK(bed.wall_c() == doctest::Approx(20.0).epsilon(1e-3));
    CHECK(std::fabs(bed.stored_kwh()) < 1e-3);
    // Colder air draws on; warmer air warms the bed.
    bed.set_air_c(-10.0);
    CHECK(bed.loss_w() > 0.0);
    bed.step(0.0, 20.0 * 86400.0);
    CHECK(bed.bed_mean_c() == doctest::Approx(-10.0).epsilon(1e-3));
    CHECK(bed.stored_kwh() < 0.0);
}

TEST_CASE("more power is hotter everywhere, loss peaks after the sun, a fan extracts heat sooner") {
    BedField weak = drum_field();
    BedField strong = drum_field();
    BedField fanned = drum_field();
    fanned.set_extraction_w_k(1.0);
    double most_w = 0.0;
    double at_h = 0.0;
    for (int step = 0; step < 144; ++step) {
        const double hours = (step + 0.5) / 6.0;
        weak.step(sun_w(110.0, hours), 600.0);
        strong.step(sun_w(220.0, hours), 600.0);
        fanned.step(sun_w(220.0, hours), 600.0);
        if (step == 30) {
            CHECK(strong.sheath_c() > weak.sheath_c());
            CHECK(strong.bed_mean_c() > weak.bed_mean_c());
            CHECK(strong.wall_c() > weak.wall_c());
            CHECK(strong.lid_c() > weak.lid_c());
            CHECK(fanned.bed_mean_c() < strong.bed_mean_c());
        }
        if (strong.loss_w() > most_w) {
            most_w = strong.loss_w();
            at_h = hours;
        }
    }
    CHECK(at_h > 6.0);
    CHECK(fanned.lost_kwh() < strong.lost_kwh());
    CHECK(fanned.stored_kwh() < strong.stored_kwh());
    CHECK(fanned.lost_kwh() + fanned.taken_kwh() > strong.lost_kwh());
    CHECK(strong.taken_kwh() == 0.0);
}

TEST_CASE("a field gives the bed temperature at a spot, between its nodes up to its surfaces") {
    BedField bed = drum_field();
    CHECK(bed.at_c(0.0, 0.0) == doctest::Approx(20.0));
    bed.step(150.0, 5.0 * 3600.0);
    const double middle_m = 0.225;
    double before_c = bed.at_c(0.03, middle_m);
    for (double r_m = 0.04; r_m <= 0.2; r_m += 0.01) {
        const double here_c = bed.at_c(std::min(r_m, 0.2), middle_m);
        CHECK(here_c < before_c);
        before_c = here_c;
    }
    CHECK(bed.at_c(0.2, middle_m) < bed.wall_c());
    CHECK(bed.at_c(0.0, middle_m) > bed.at_c(0.0, 0.02));
    CHECK(bed.at_c(0.0, middle_m) > bed.at_c(0.0, 0.45));
    CHECK(bed.near_leg_c(0.0) < bed.sheath_c() + 0.5);
    CHECK(bed.near_leg_c(0.05) < bed.near_leg_c(0.02));
    // Across a row the bed is colder than in the mean around it; around one leg it is the same.
    CHECK(bed.near_leg_c(0.10) < bed.at_c(std::hypot(0.10, 0.03), middle_m));
    BedField one(dry_sand(0.27, 0.5), bare_cylinder(0.40, 0.45), upright_legs(1, 0.30, 0.0), 20.0,
                 20.0);
    one.step(100.0, 5.0 * 3600.0);
    for (const double r_m : {0.05, 0.10, 0.15, 0.199}) {
        CHECK(one.near_leg_c(r_m) == doctest::Approx(one.at_c(r_m, middle_m)).epsilon(2e-2));
    }
}
