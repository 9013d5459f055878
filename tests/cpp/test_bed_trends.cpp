#include "bed_examples.hpp"
#include "within.hpp"

#include <algorithm>
#include <cmath>
#include <random>

#include <doctest/doctest.h>

#include "heatmatch/heat/bed_charge.hpp"

using heatmatch::bed_temperature_c;
using heatmatch::bed_temperatures;
using heatmatch::BedCharge;
using heatmatch::BedTemperatures;
using heatmatch::hours_to_limit;
using heatmatch::largest_power_w;

namespace {

/// A store with one element, and its power.
struct StoreCase {
    double diameter_m = 0.0;
    double height_m = 0.0;
    double leg_m = 0.0;
    double spacing_m = 0.0;
    double k20_w_mk = 0.0;
    double hours = 0.0;
    double air_c = 0.0;
    double power_w = 0.0;
    int legs = 1;
    bool insulated = false;
    double days = 1.0;

    [[nodiscard]] BedCharge charge() const {
        heatmatch::Store store = bright_store(diameter_m, height_m);
        if (insulated) store.side_u_w_m2k = 0.6;
        BedCharge made = bed_of(store, rod_of(leg_m, legs, spacing_m), k20_w_mk, hours, air_c);
        made.days = days;
        return made;
    }
    [[nodiscard]] double sheath_c() const { return bed_temperatures(charge(), power_w).sheath_c; }
};

/// Pots and drums at random, of a fixed seed; a tenth of a W/cm to some more than alloys bear.
std::vector<StoreCase> random_cases() {
    std::mt19937 random(20240614);
    std::uniform_real_distribution<double> share(0.0, 1.0);
    std::vector<StoreCase> cases;
    for (int i = 0; i < 300; ++i) {
        StoreCase each;
        each.diameter_m = 0.2 + 0.8 * share(random);
        each.height_m = 0.2 + 0.8 * share(random);
        each.leg_m = each.height_m * (0.3 + 0.6 * share(random));
        each.legs = 1 + static_cast<int>(4.0 * share(random));
        each.spacing_m = 0.015 + 0.8 * (each.diameter_m / 4.0 - 0.02) * share(random);
        each.k20_w_mk = 0.15 + 0.5 * share(random);
        each.hours = std::exp(std::log(0.02) + std::log(1000.0) * share(random));
        each.air_c = -30.0 + 70.0 * share(random);
        each.power_w =
            100.0 * each.leg_m * each.legs * std::exp(std::log(0.1) * share(random)) * 5.0;
        each.insulated = share(random) < 0.5;
        each.days = share(random) < 0.5 ? 1.0 : 1.0 + std::floor(20.0 * share(random));
        cases.push_back(each);
    }
    return cases;
}

}  // namespace

TEST_CASE("a sheath gets hotter with power, time, poorer sand and closer legs") {
    for (const StoreCase& each : random_cases()) {
        CAPTURE(each.diameter_m);
        CAPTURE(each.hours);
        CAPTURE(each.power_w);
        CAPTURE(each.days);
        const double at_c = each.sheath_c();
        CHECK(at_c > each.air_c);
        CHECK(at_c < 3300.0);
        StoreCase other = each;
        other.power_w *= 1.05;
        CHECK(other.sheath_c() > at_c);
        other = each;
        other.hours = std::min(24.0, 1.2 * each.hours);
        CHECK(other.sheath_c() > at_c);
        other = each;
        other.k20_w_mk *= 0.9;
        CHECK(other.sheath_c() > at_c);
        other = each;
        other.days += 1.0;
        CHECK(other.sheath_c() >= at_c - 1e-4);
        other = each;
        other.air_c += 5.0;
        CHECK(other.sheath_c() > at_c);
        if (each.legs > 1) {
            other = each;
            other.spacing_m *= 0.9;
            CHECK(other.sheath_c() >= at_c - 1e-6);
        }
        other = each;
        other.leg_m *= 1.1;
        CHECK(other.sheath_c() < at_c);
    }
}

TEST_CASE("temperatures fall from the sheath to the bed, its edge and the air") {
    for (const StoreCase& each : random_cases()) {
        CAPTURE(each.diameter_m);
        CAPTURE(each.height_m);
        CAPTURE(each.hours);
        CAPTURE(each.power_w);
        const BedTemperatures at = bed_temperatures(each.charge(), each.power_w);
        CHECK(at.sheath_c >= at.bed_mean_c);
        CHECK(at.bed_mean_c >= at.edge_c);
        CHECK(at.edge_c >= each.air_c);
        CHECK(at.wall_c >= each.air_c);
        CHECK(at.wall_c <= at.sheath_c);
        CHECK(at.lid_c >= each.air_c);
        CHECK(at.lid_c <= at.sheath_c);
        // The mean of wall, lid and floor is that of a bulk in which heat has spread: hotter,
        // early, than the wall in three dimensions, which the wall's own spot is held to.
        CHECK(at.inner_c >= at.edge_c - 1e-9);
    }
}

TEST_CASE("no power, no rise") {
    const BedTemperatures at = bed_temperatures(pot_hairpin(), 0.0);
    for (const double t_c : {at.sheath_c, at.bed_mean_c, at.edge_c, at.wall_c, at.lid_c}) {
        CHECK(t_c == doctest::Approx(20.0).epsilon(1e-9));
    }
}

TEST_CASE("the largest power is the one at which the sheath reaches the limit") {
    for (const StoreCase& each : random_cases()) {
        const BedCharge charge = each.charge();
        double last_w = 0.0;
        for (const double limit_c : {150.0, 370.0, 540.0, 760.0}) {
            for (const double factor : {1.0, heatmatch::verdict_factor}) {
                const double power_w = largest_power_w(charge, limit_c, factor);
                const double rise_k = bed_temperatures(charge, power_w).sheath_c - each.air_c;
                CAPTURE(each.power_w);
                CAPTURE(limit_c);
                CHECK(within_abs(each.air_c + factor * rise_k, limit_c, 1e-3));
                CHECK(each.air_c + factor * rise_k <= limit_c);
            }
            const double power_w = largest_power_w(charge, limit_c);
            CHECK(power_w > last_w);
            last_w = power_w;
        }
    }
    CHECK(largest_power_w(pot_hairpin(), 20.0) == 0.0);
    CHECK(largest_power_w(pot_hairpin(), -5.0) == 0.0);
}

TEST_CASE("the hours to a limit are those after which the sheath has it") {
    for (const double power_w : {60.0, 130.0, 500.0, 4000.0}) {
        for (const double limit_c : {100.0, 300.0}) {
            BedCharge charge = pot_hairpin();
            charge.days = 3.0;  // it starts from cold whatever the charge says
            const auto hours = hours_to_limit(charge, power_w, limit_c);
            CAPTURE(power_w);
            CAPTURE(limit_c);
            REQUIRE(hours);
            charge.days = 1.0;
            charge.hours = *hours;
            CHECK(within_abs(bed_temperatures(charge, power_w).sheath_c, limit_c, 1e-3));
        }
    }
    CHECK_FALSE(hours_to_limit(pot_hairpin(), 20.0, 600.0));
    CHECK_FALSE(hours_to_limit(pot_hairpin(), 130.0, 500.0, 0.2));
    CHECK(hours_to_limit(pot_hairpin(), 130.0, 20.0).value() == 0.0);
}

// Source: a bare pot has a time constant of some hours and starts each day anew; a drum in 0.6
// W/m2K keeps its heat for days (prototype: 3.3 h; more than 120 h).
TEST_CASE("days add up in an insulated store, not in a bare pot") {
    BedCharge pot = pot_hairpin();
    const double pot_first_c = bed_temperatures(pot, 60.0).bed_mean_c;
    pot.days = 10.0;
    CHECK(bed_temperatures(pot, 60.0).bed_mean_c - pot_first_c < 4.0);

    heatmatch::Store store = bright_store(0.58, 0.85);
    store.side_u_w_m2k = 0.6;
    store.top_u_w_m2k = 0.6;
    store.bottom_u_w_m2k = 0.6;
    BedCharge drum = bed_of(store, rod_of(0.6, 2, 0.08), 0.27, 5.0);
    const double first_c = bed_temperatures(drum, 250.0).bed_mean_c;
    drum.days = 2.0;
    const double second_c = bed_temperatures(drum, 250.0).bed_mean_c;
    drum.days = 10.0;
    const double tenth_c = bed_temperatures(drum, 250.0).bed_mean_c;
    CHECK(second_c - first_c > 8.0);
    CHECK(tenth_c - first_c > 30.0);
    // Days of 24 h without a break are one long charge.
    drum.hours = 24.0;
    drum.days = 5.0;
    const BedTemperatures by_day = bed_temperatures(drum, 60.0);
    drum.hours = 120.0;
    drum.days = 1.0;
    const BedTemperatures at_once = bed_temperatures(drum, 60.0);
    CHECK(by_day.bed_mean_c == doctest::Approx(at_once.bed_mean_c).epsilon(1e-6));
    CHECK(by_day.sheath_c == doctest::Approx(at_once.sheath_c).epsilon(1e-4));
}

// Source: energy: what a cold store has taken in after a while is in its sand, but for some 10 %
// that its wall has lost; quartz counted at its mean temperature, hot sand holds more.
TEST_CASE("early on the bulk stores the supplied heat") {
    for (const double power_w : {100.0, 2000.0}) {
        const BedCharge charge = pot_hairpin(0.27, 0.5);
        const double rise_k = bed_temperatures(charge, power_w).bed_mean_c - 20.0;
        const double held_j = charge.shell.volume_m3 *
                              charge.fill.mean_capacity_j_m3k(293.15, 293.15 + rise_k) * rise_k;
        CAPTURE(power_w);
        CHECK(held_j < power_w * 1800.0);
        CHECK(held_j > 0.92 * power_w * 1800.0);
    }
}

// Source: q'/(2 pi) ln(d) of a line: a pipe of 40 mm is as cool outside as the sand 20 mm from a
// bare sheath. The air in it keeps heat back, all the more where it is narrow: there is less to
// radiate.
TEST_CASE("a pipe cools the sand around it, but its air keeps the rod hot") {
    const double power_w = 100.0;
    const auto piped = [](double pipe_mm) {
        heatmatch::Store store = small_pot();
        store.spreader_diameter_mm = pipe_mm;
        return bed_of(store, rod_of(0.22, 2, 0.05), 0.27, 5.0);
    };
    BedCharge filled = piped(40.0);  // of solid metal: no air, no drop
    filled.legs.sheath_radius_m = filled.legs.radius_m;
    const double bare_c = bed_temperatures(pot_hairpin(), power_w).sheath_c;
    const double filled_c = bed_temperatures(filled, power_w).sheath_c;
    CHECK(filled_c < bare_c - 100.0);
    CHECK(within(filled_c, bed_temperature_c(pot_hairpin(), power_w, 0.020), 0.04));
    CHECK(bed_temperatures(piped(40.0), power_w).sheath_c > filled_c + 20.0);
    CHECK(bed_temperatures(piped(12.0), power_w).sheath_c > bare_c);
    // Radiation grows with the fourth power: at 7 W/cm a wide pipe helps after all.
    CHECK(bed_temperatures(piped(40.0), 300.0).sheath_c <
          bed_temperatures(pot_hairpin(), 300.0).sheath_c);
}

// Source: two surfaces of 0.8 and a millimetre of air of 0.045 W/mK at 400 °C, put together here:
// q' = 2 pi k/ln(5/4) dT + 2 pi r e sigma (Ts^4 - To^4).
TEST_CASE("settled sand makes the sheath hotter, the sooner the emptier") {
    const double power_w = 100.0;
    BedCharge settled = pot_hairpin();
    double last_c = bed_temperatures(settled, power_w).sheath_c;
    for (const double gap_m : {0.0002, 0.0005, 0.001}) {
        settled.gap_m = gap_m;
        const double at_c = bed_temperatures(settled, power_w).sheath_c;
        CAPTURE(gap_m);
        CHECK(at_c > last_c);
        CHECK(at_c < last_c + 60.0);
        last_c = at_c;
        // The short way is a little hotter: it does not count that the sand's surface has grown.
        const BedCharge touching = pot_hairpin();
        const double touching_c = bed_temperatures(touching, power_w).sheath_c;
        const double short_c = heatmatch::settled_sheath_c(touching, power_w, touching_c, gap_m);
        CHECK(short_c > at_c);
        CHECK(short_c < at_c + 0.1 * (at_c - touching.air_c));
    }
    const double outer_c = bed_temperature_c(settled, power_w, 0.0);
    const double emitted = 1.0 / (1.0 / 0.8 + 4.0 / 5.0 * (1.0 / 0.8 - 1.0));
    const double k = 0.045 + 7.5e-5 * (0.5 * (last_c + outer_c) - 400.0);
    const double carried = 2.0 * 3.14159265 *
                           (k / std::log(5.0 / 4.0) * (last_c - outer_c) +
                            0.004 * emitted * 5.670374e-8 *
                                (std::pow(last_c + 273.15, 4.0) - std::pow(outer_c + 273.15, 4.0)));
    CHECK(within(carried, power_w / 0.44, 0.06));
}

TEST_CASE("the bed is cooler away from a leg, and equals the sheath at it") {
    const BedCharge charge = pot_hairpin();
    const double sheath_c = bed_temperatures(charge, 100.0).sheath_c;
    CHECK(within_abs(bed_temperature_c(charge, 100.0, 0.004), sheath_c, 0.5));
    double last_c = sheath_c + 1.0;
    for (double distance_m = 0.004; distance_m < 0.09; distance_m *= 1.3) {
        const double at_c = bed_temperature_c(charge, 100.0, distance_m);
        CHECK(at_c < last_c);
        last_c = at_c;
    }
    CHECK(last_c >= bed_temperatures(charge, 100.0).bed_mean_c);
}
