#include "charged_drum.hpp"
#include "exact_conduction.hpp"
#include "heat_beds.hpp"
#include "refusal.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <random>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/heat/bed_charge.hpp"
#include "heatmatch/heat/bed_shells.hpp"

using heatmatch::BedShells;

namespace {

BedShells drum_shells(double start_c = 20.0) {
    return {dry_sand(0.27, 0.5), bare_cylinder(0.40, 0.45), upright_legs(2, 0.30, 0.06), 20.0,
            start_c};
}

}  // namespace

TEST_CASE("every step of a bed of shells accounts for its heat") {
    std::mt19937 engine(77U);
    const auto between = [&engine](double low, double high) {
        return low + (high - low) * static_cast<double>(engine()) / 4294967296.0;
    };
    double worst_kwh = 0.0;
    double hottest_c = 0.0;
    for (const int legs : {1, 2, 4}) {
        BedShells bed(dry_sand(0.20, 0.5), bare_cylinder(0.30, 0.35),
                      upright_legs(legs, 0.25, 0.05), 5.0, 5.0);
        double supplied_kwh = 0.0;
        for (int step = 0; step < 500; ++step) {
            // Strong enough to cross the transition of quartz at 573 °C, now and then cut off.
            const double power_w = between(0.0, 1.0) < 0.3 ? 0.0 : between(0.0, 400.0 * legs);
            const double seconds = between(1.0, 3000.0);
            bed.step(power_w, seconds);
            supplied_kwh += power_w * seconds / 3.6e6;
            worst_kwh =
                std::max(worst_kwh, std::fabs(supplied_kwh - bed.stored_kwh() - bed.lost_kwh()));
            hottest_c = std::max(hottest_c, bed.sheath_c());
        }
        CHECK(bed.supplied_kwh() == doctest::Approx(supplied_kwh).epsilon(1e-12));
        CHECK(bed.lost_kwh() > 1.0);
    }
    CHECK(hottest_c > 700.0);
    CHECK(worst_kwh < 1e-9);
}

// Source: first law; a lumped body cools as exp(-UA t/mc) (Incropera, chapter 5).
TEST_CASE("a bed that conducts without end cools as one lump") {
    const double side_u = 5.0;
    const heatmatch::StoreShell shell = wrapped_cylinder(0.30, 0.35, side_u, 3.0);
    BedShells bed(constant_fill(1e6, 800.0, 1550.0), shell, upright_legs(1, 0.25, 0.0), 20.0,
                  120.0);
    const double ua = side_u * shell.side_m2 + 3.0 * (shell.top_m2 + shell.bottom_m2);
    const double tau_s = 1550.0 * 800.0 * shell.volume_m3 / ua;
    for (int hour = 1; hour <= 10; ++hour) {
        for (int i = 0; i < 360; ++i) bed.step(0.0, 10.0);
        const double exact = std::exp(-3600.0 * hour / tau_s);
        CHECK((bed.bed_mean_c() - 20.0) / 100.0 == doctest::Approx(exact).epsilon(2e-3));
    }
}

// Source: first law.
TEST_CASE("a bed that loses nothing warms by its heat over its capacity") {
    const heatmatch::StoreShell shell = wrapped_cylinder(0.30, 0.35, 1e-12, 0.0);
    BedShells bed(constant_fill(0.3, 800.0, 1550.0), shell, upright_legs(2, 0.25, 0.05), 20.0,
                  20.0);
    for (int i = 0; i < 12; ++i) bed.step(100.0 + 10.0 * i, 1800.0);
    const double joules = 1800.0 * (12 * 100.0 + 10.0 * 66.0);
    const double rise_k = joules / (1550.0 * 800.0 * shell.volume_m3);
    CHECK(bed.bed_mean_c() - 20.0 == doctest::Approx(rise_k).epsilon(1e-9));
    CHECK(bed.stored_kwh() == doctest::Approx(joules / 3.6e6).epsilon(1e-12));
    // With cp(T) too, once it has become one temperature: then by enthalpy.
    BedShells sand(dry_sand(0.27, 0.5), shell, upright_legs(2, 0.25, 0.05), 20.0, 20.0);
    sand.step(200.0, 8.0 * 3600.0);
    sand.step(0.0, 2000.0 * 3600.0);
    const double even_k = sand.bed_mean_c() + 273.15;
    CHECK(1550.0 * shell.volume_m3 * quartz().enthalpy(even_k) ==
          doctest::Approx(200.0 * 8.0 * 3600.0).epsilon(1e-6));
    CHECK(sand.edge_c() == doctest::Approx(sand.sheath_c()).epsilon(1e-4));
}

// Source: Carslaw & Jaeger, section 10.4 (lines of finite length, before heat meets the wall).
TEST_CASE("the sheath over the shells rises like a line source in endless sand") {
    const double k = 0.3;
    const double diffusivity = k / (1550.0 * 800.0);
    for (const int legs : {1, 2}) {
        BedShells bed(constant_fill(k, 800.0, 1550.0), wrapped_cylinder(0.9, 0.9, 1.0, 1.0),
                      upright_legs(legs, 0.4, 0.06), 20.0, 20.0);
        double before_h = 0.0;
        for (const double hours : {1.0, 3.0, 5.0}) {
            bed.step(80.0 * legs, (hours - before_h) * 3600.0);
            before_h = hours;
            const auto rise = [&](double distance_m) {
                return finite_line_rise_k(200.0, k, diffusivity, 0.4, distance_m, hours * 3600.0);
            };
            const double exact = rise(0.004) + (legs > 1 ? rise(0.06) : 0.0);
            const double error = (bed.sheath_c() - 20.0) / exact - 1.0;
            CHECK(std::fabs(error) < (hours < 2.0 ? 0.08 : 0.04));
        }
    }
}

TEST_CASE(
    "in the end the loss of a bed equals its power, and it cools to the air with the "
    "power off") {
    BedShells bed = drum_shells();
    bed.step(120.0, 400.0 * 3600.0);
    CHECK(bed.loss_w() == doctest::Approx(120.0).epsilon(1e-3));
    CHECK(bed.sheath_c() > bed.bed_mean_c());
    CHECK(bed.bed_mean_c() > bed.edge_c());
    CHECK(bed.wall_c() >= bed.edge_c());
    CHECK(bed.lid_c() > 20.0);
    CHECK(bed.lid_c() < bed.edge_c());
    double before_c = bed.bed_mean_c();
    for (int day = 0; day < 10; ++day) {
        bed.step(0.0, 86400.0);
        CHECK(bed.bed_mean_c() < before_c);
        before_c = bed.bed_mean_c();
    }
    bed.step(0.0, 60.0 * 86400.0);
    CHECK(bed.sheath_c() == doctest::Approx(20.0).epsilon(1e-3));
    CHECK(bed.wall_c() == doctest::Approx(20.0).epsilon(1e-3));
    CHECK(std::fabs(bed.stored_kwh()) < 1e-3);
    // Colder air draws on; warmer air warms the bed.
    bed.set_air_c(-10.0);
    bed.step(0.0, 60.0 * 86400.0);
    CHECK(bed.bed_mean_c() == doctest::Approx(-10.0).epsilon(1e-3));
    CHECK(bed.stored_kwh() < 0.0);
}

TEST_CASE("smaller steps change little, and their error falls with the step") {
    const auto day_with = [](double step_s) {
        BedShells bed = drum_shells();
        std::array<double, 3> at{};
        for (double s = 0.0; s < 14.0 * 3600.0 - 1.0; s += step_s) {
            // Power of the 600 s that the step lies in: only the steps differ.
            const double middle_h = (std::floor(s / 600.0) + 0.5) * 600.0 / 3600.0;
            bed.step(sun_w(220.0, middle_h), step_s);
            if (std::fabs(s + step_s - 5.0 * 3600.0) < 1.0) at[0] = bed.sheath_c();
            if (std::fabs(s + step_s - 9.0 * 3600.0) < 1.0) at[1] = bed.sheath_c();
        }
        at[2] = bed.bed_mean_c();
        return at;
    };
    const auto whole = day_with(600.0);
    const auto half = day_with(300.0);
    const auto quarter = day_with(150.0);
    for (std::size_t i = 0; i < whole.size(); ++i) {
        const double order = std::log2((whole[i] - half[i]) / (half[i] - quarter[i]));
        CHECK(order == doctest::Approx(1.0).epsilon(0.25));
        CHECK(std::fabs(whole[i] - quarter[i]) < 8.0);
    }
    // Inside, long steps are cut to those of 600 s.
    BedShells once = drum_shells();
    BedShells often = drum_shells();
    once.step(180.0, 7200.0);
    for (int i = 0; i < 12; ++i) often.step(180.0, 600.0);
    CHECK(once.sheath_c() == doctest::Approx(often.sheath_c()).epsilon(1e-12));
}

TEST_CASE("constant power in shells stays near the closed form") {
    for (const int legs : {1, 2}) {
        for (const double hours : {1.0, 3.0, 5.0, 8.0}) {
            const heatmatch::BedCharge charge{.fill = dry_sand(0.27, 0.5),
                                              .shell = bare_cylinder(0.40, 0.45),
                                              .legs = upright_legs(legs, 0.30, 0.06),
                                              .air_c = 10.0,
                                              .hours = hours};
            BedShells bed(charge.fill, charge.shell, charge.legs, 10.0, 10.0);
            bed.step(90.0 * legs, hours * 3600.0);
            const double closed_c = bed_temperatures(charge, 90.0 * legs).sheath_c;
            const double error = (bed.sheath_c() - closed_c) / (closed_c - 10.0);
            CHECK(std::fabs(error) < 0.08);
        }
    }
}

TEST_CASE("a bed of shells refuses meaningless input, by name") {
    const heatmatch::BedFill sand = dry_sand(0.27, 0.5);
    const heatmatch::StoreShell shell = bare_cylinder(0.40, 0.45);
    const heatmatch::LegLayout legs = upright_legs(2, 0.30, 0.06);
    const double nothing = std::numeric_limits<double>::quiet_NaN();
    using heatmatch::InvalidInput;
    const auto refused = [](auto action) { return refusal_of<InvalidInput>(action); };
    CHECK(holds(refused([&] { BedShells(sand, shell, legs, nothing, 20.0); }), "air_c"));
    CHECK(holds(refused([&] { BedShells(sand, shell, legs, 20.0, -400.0); }), "start_c"));
    CHECK(holds(refused([&] { BedShells({}, shell, legs, 20.0, 20.0); }), "density_kg_m3"));
    CHECK(holds(refused([&] { BedShells(sand, {}, legs, 20.0, 20.0); }), "volume_m3"));
    CHECK(holds(refused([&] { BedShells(sand, shell, {}, 20.0, 20.0); }), "legs"));
    BedShells bed(sand, shell, legs, 20.0, 20.0);
    CHECK(holds(refused([&] { bed.step(-1.0, 60.0); }), "power_w"));
    CHECK(holds(refused([&] { bed.step(nothing, 60.0); }), "power_w"));
    CHECK(holds(refused([&] { bed.step(1.0, -60.0); }), "seconds"));
    CHECK(holds(refused([&] { bed.set_air_c(1e9); }), "air_c"));
    CHECK(bed.supplied_kwh() == 0.0);
}
