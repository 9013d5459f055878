#include "charged_drum.hpp"
#include "exact_conduction.hpp"
#include "heat_beds.hpp"
#include "refusal.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <random>

#include <doctest/doctest.h>

#include "heatmatch/heat/bed_field.hpp"
#include "heatmatch/heat/bed_shells.hpp"

using heatmatch::BedField;

namespace {

constexpr double no_rods = 0.0;

double heat_of_w_k(const heatmatch::StoreShell& shell) {
    return shell.side_u_w_m2k * shell.side_m2 + shell.top_u_w_m2k * shell.top_m2 +
           shell.bottom_u_w_m2k * shell.bottom_m2;
}

}  // namespace

TEST_CASE("every step of a field conserves heat for any power, air and fan") {
    std::mt19937 engine(78U);
    const auto between = [&engine](double low, double high) {
        return low + (high - low) * static_cast<double>(engine()) / 4294967296.0;
    };
    double worst = 0.0;
    double hottest_c = 0.0;
    for (const int legs : {1, 2, 4}) {
        BedField bed(dry_sand(0.20, 0.5), bare_cylinder(0.30, 0.35), upright_legs(legs, 0.25, 0.05),
                     5.0, 5.0, {.across = 8, .high = 10});
        double supplied_kwh = 0.0;
        for (int step = 0; step < 150; ++step) {
            // Strong enough to cross the transition of quartz at 573 °C, now and then cut off.
            const double power_w = between(0.0, 1.0) < 0.3 ? 0.0 : between(0.0, 400.0 * legs);
            const double seconds = between(1.0, 3000.0);
            bed.set_air_c(between(-20.0, 40.0));
            bed.set_extraction_w_k(between(0.0, 1.0) < 0.5 ? 0.0 : between(0.0, 3.0));
            bed.step(power_w, seconds);
            supplied_kwh += power_w * seconds / 3.6e6;
            const double accounted_kwh = bed.stored_kwh() + bed.lost_kwh() + bed.taken_kwh();
            worst = std::max(worst,
                             std::fabs(accounted_kwh - supplied_kwh) / std::max(supplied_kwh, 1.0));
            hottest_c = std::max(hottest_c, bed.sheath_c());
        }
        CHECK(bed.supplied_kwh() == doctest::Approx(supplied_kwh).epsilon(1e-12));
        CHECK(bed.lost_kwh() > 1.0);
        CHECK(bed.taken_kwh() > 1.0);
    }
    CHECK(hottest_c > 700.0);
    CHECK(worst < 1e-6);
}

// Source: first law; a lumped body cools as exp(-UA t/mc) (Incropera, chapter 5).
TEST_CASE("a bed that conducts without end cools as one lump, in shells and in a field") {
    const heatmatch::BedFill fill = constant_fill(1e6, 800.0, 1550.0);
    const heatmatch::StoreShell shell = wrapped_cylinder(0.30, 0.35, 5.0, 3.0);
    const heatmatch::LegLayout legs = upright_legs(1, 0.25, 0.0);
    heatmatch::BedShells shells(fill, shell, legs, 20.0, 120.0);
    const heatmatch::BedFieldMesh mesh{.across = 5, .high = 5, .longest_step_s = 150.0};
    BedField field(fill, shell, legs, 20.0, 120.0, mesh, no_rods);
    BedField fan(fill, shell, legs, 20.0, 120.0, mesh, no_rods);
    constexpr double fan_w_k = 4.0;
    fan.set_extraction_w_k(fan_w_k);
    const double capacity_j_k = 1550.0 * 800.0 * shell.volume_m3;
    const double loss_w_k = heat_of_w_k(shell);
    CHECK(field.loss_w() == doctest::Approx(loss_w_k * 100.0).epsilon(1e-6));
    CHECK(fan.extraction_w() == doctest::Approx(fan_w_k * 100.0).epsilon(1e-9));
    double worst_shells = 0.0;
    double worst_field = 0.0;
    double worst_fan = 0.0;
    const auto off = [](double bed_c, double exact) {
        return std::fabs((bed_c - 20.0) / 100.0 / exact - 1.0);
    };
    for (int hour = 1; hour <= 8; ++hour) {
        for (int i = 0; i < 60; ++i) shells.step(0.0, 60.0);
        field.step(0.0, 3600.0);
        fan.step(0.0, 3600.0);
        const double exact = std::exp(-3600.0 * hour * loss_w_k / capacity_j_k);
        const double with_fan = std::exp(-3600.0 * hour * (loss_w_k + fan_w_k) / capacity_j_k);
        worst_shells = std::max(worst_shells, off(shells.bed_mean_c(), exact));
        worst_field = std::max(worst_field, off(field.bed_mean_c(), exact));
        worst_fan = std::max(worst_fan, off(fan.bed_mean_c(), with_fan));
    }
    CHECK(worst_shells < 5e-3);
    CHECK(worst_field < 1e-4);
    CHECK(worst_fan < 5e-4);
    // What went out by the fan and by the wall stands as their conductances do.
    CHECK(fan.taken_kwh() / fan.lost_kwh() == doctest::Approx(fan_w_k / loss_w_k).epsilon(1e-5));
}

// Source: first law; a lumped body under constant power rises as P/UA (1 - exp(-UA t/mc)).
TEST_CASE("constant power lifts a lump along 1 - exp(-t/tau)") {
    const heatmatch::StoreShell shell = wrapped_cylinder(0.30, 0.35, 5.0, 3.0);
    const double loss_w_k = heat_of_w_k(shell);
    const double capacity_j_k = 1550.0 * 800.0 * shell.volume_m3 + 170.0 * 0.5;
    BedField bed(constant_fill(1e6, 800.0, 1550.0), shell, upright_legs(2, 0.25, 0.05), 20.0, 20.0);
    const double tau_s = capacity_j_k / loss_w_k;
    for (const double taus : {0.25, 0.5, 1.0, 2.0, 4.0}) {
        BedField from_start = bed;  // a copy goes its own way
        from_start.step(100.0, taus * tau_s);
        const double exact_k = 100.0 / loss_w_k * -std::expm1(-taus);
        CHECK(from_start.bed_mean_c() - 20.0 == doctest::Approx(exact_k).epsilon(1e-4));
        CHECK(from_start.loss_w() == doctest::Approx(-100.0 * std::expm1(-taus)).epsilon(2e-4));
    }
    CHECK(bed.bed_mean_c() == doctest::Approx(20.0).epsilon(1e-9));
}

// Source: first law.
TEST_CASE("a field that loses nothing warms by its heat over its capacity") {
    const heatmatch::StoreShell shell = wrapped_cylinder(0.30, 0.35, 1e-12, 0.0);
    const heatmatch::LegLayout legs = upright_legs(2, 0.25, 0.05);
    BedField bed(constant_fill(0.3, 800.0, 1550.0), shell, legs, 20.0, 20.0, {}, no_rods);
    for (int i = 0; i < 12; ++i) bed.step(100.0 + 10.0 * i, 1800.0);
    const double joules = 1800.0 * (12 * 100.0 + 10.0 * 66.0);
    const double rise_k = joules / (1550.0 * 800.0 * shell.volume_m3);
    CHECK(bed.bed_mean_c() - 20.0 == doctest::Approx(rise_k).epsilon(1e-5));
    CHECK(bed.stored_kwh() == doctest::Approx(joules / 3.6e6).epsilon(1e-9));
    // With cp(T) and rods too, once it has become one temperature: then by enthalpy.
    BedField sand(dry_sand(0.27, 0.5), shell, legs, 20.0, 20.0,
                  {.across = 6, .high = 8, .longest_step_s = 1800.0});
    sand.step(200.0, 8.0 * 3600.0);
    sand.step(0.0, 400.0 * 3600.0);
    const double even_c = sand.bed_mean_c();
    const double held_j = 1550.0 * shell.volume_m3 * quartz().enthalpy(even_c + 273.15) +
                          170.0 * 0.5 * (even_c - 20.0);
    CHECK(held_j == doctest::Approx(200.0 * 8.0 * 3600.0).epsilon(2e-5));
    CHECK(sand.edge_c() == doctest::Approx(sand.sheath_c()).epsilon(1e-3));
}

// Source: Carslaw & Jaeger, section 10.4 (lines of finite length, before heat meets the wall).
TEST_CASE("sheath and bed rise like line sources in infinite sand") {
    const double k = 0.3;
    const double diffusivity = k / (1550.0 * 800.0);
    for (const double apart_m : {0.0, 0.06, 0.30}) {
        const int legs = apart_m > 0.0 ? 2 : 1;
        BedField bed(constant_fill(k, 800.0, 1550.0), wrapped_cylinder(0.9, 0.9, 1.0, 1.0),
                     upright_legs(legs, 0.4, apart_m), 20.0, 20.0, {}, no_rods);
        double before_h = 0.0;
        for (const double hours : {1.0, 3.0, 5.0}) {
            bed.step(80.0 * legs, (hours - before_h) * 3600.0);
            before_h = hours;
            const auto rise = [&](double distance_m) {
                return finite_line_rise_k(200.0, k, diffusivity, 0.4, distance_m, hours * 3600.0);
            };
            // Beside the leg, away from the row at a right angle.
            constexpr double beside_m = 0.02;
            double exact = rise(0.004);
            double beside = rise(beside_m);
            if (legs > 1) {
                exact += rise(apart_m);
                beside += rise(std::hypot(apart_m, beside_m));
            }
            const double error = (bed.sheath_c() - 20.0) / exact - 1.0;
            const double beside_error = (bed.near_leg_c(beside_m) - 20.0) / beside - 1.0;
            CHECK(std::fabs(error) < 0.03);
            CHECK(std::fabs(beside_error) < 0.06);
        }
        CHECK(bed.near_leg_c(0.0) == doctest::Approx(bed.sheath_c()).epsilon(1e-2));
    }
}

TEST_CASE("a field's error falls with the square of its step") {
    const auto after_a_day_with = [](double step_s) {
        BedField bed = drum_field({.longest_step_s = step_s});
        for (int hour = 0; hour < 10; ++hour) bed.step(sun_w(220.0, hour + 0.5), 3600.0);
        const double loss_w = bed.loss_w();
        bed.step(0.0, 3600.0);
        return std::array{bed.bed_mean_c(), bed.edge_c(), bed.near_leg_c(0.0), loss_w};
    };
    const auto whole = after_a_day_with(1200.0);
    const auto half = after_a_day_with(600.0);
    const auto quarter = after_a_day_with(300.0);
    for (std::size_t i = 0; i < whole.size(); ++i) {
        const double order = std::log2((whole[i] - half[i]) / (half[i] - quarter[i]));
        CHECK(order > 1.5);
        CHECK(order < 2.8);
    }
    // Inside, long steps are cut to those of the mesh.
    BedField once = drum_field();
    BedField often = drum_field();
    once.step(180.0, 7200.0);
    for (int i = 0; i < 12; ++i) often.step(180.0, 600.0);
    CHECK(once.sheath_c() == doctest::Approx(often.sheath_c()).epsilon(1e-9));
}

// Source: first law.
TEST_CASE("a box is a cylinder that loses by the box's own sides") {
    const heatmatch::StoreShell box = heatmatch::store_shell({.shape = heatmatch::StoreShape::box,
                                                              .width_m = 0.6,
                                                              .depth_m = 0.3,
                                                              .height_m = 0.4,
                                                              .top_u_w_m2k = 2.0,
                                                              .side_u_w_m2k = 5.0,
                                                              .bottom_u_w_m2k = 3.0});
    BedField bed(constant_fill(1e6, 800.0, 1550.0), box, upright_legs(2, 0.3, 0.4), 20.0, 60.0);
    CHECK(bed.loss_w() == doctest::Approx(40.0 * heat_of_w_k(box)).epsilon(1e-6));
    // Legs far out along the box lie as far out in the cylinder.
    BedField sand(dry_sand(0.27, 0.5), box, upright_legs(2, 0.3, 0.4), 20.0, 20.0);
    sand.step(200.0, 5.0 * 3600.0);
    CHECK(sand.supplied_kwh() ==
          doctest::Approx(sand.stored_kwh() + sand.lost_kwh()).epsilon(1e-9));
    CHECK(sand.sheath_c() > sand.at_c(0.16, 0.2));
    CHECK(sand.at_c(0.16, 0.2) > sand.at_c(0.0, 0.2));
}

TEST_CASE("a field refuses meaningless input, by name") {
    const heatmatch::BedFill sand = dry_sand(0.27, 0.5);
    const heatmatch::StoreShell shell = bare_cylinder(0.40, 0.45);
    const heatmatch::LegLayout legs = upright_legs(2, 0.30, 0.06);
    const double nothing = std::numeric_limits<double>::quiet_NaN();
    using heatmatch::InvalidInput;
    const auto refused = [](auto action) { return refusal_of<InvalidInput>(action); };
    CHECK(holds(refused([&] { BedField(sand, shell, legs, nothing, 20.0); }), "air_c"));
    CHECK(holds(refused([&] { BedField(sand, shell, legs, 20.0, -400.0); }), "start_c"));
    CHECK(holds(refused([&] { BedField({}, shell, legs, 20.0, 20.0); }), "density_kg_m3"));
    CHECK(holds(refused([&] { BedField({.density_kg_m3 = 1.0}, shell, legs, 20.0, 20.0); }),
                "heat_capacity_j_kgk"));
    CHECK(holds(refused([&] { BedField(sand, {}, legs, 20.0, 20.0); }), "volume_m3"));
    CHECK(
        holds(refused([&] { BedField(sand, shell, heatmatch::LegLayout{}, 20.0, 20.0); }), "legs"));
    CHECK(
        holds(refused([&] { BedField(sand, shell, legs, 20.0, 20.0, {.across = 2}); }), "across"));
    CHECK(holds(refused([&] { BedField(sand, shell, legs, 20.0, 20.0, {.high = 5000}); }), "high"));
    CHECK(holds(refused([&] { BedField(sand, shell, legs, 20.0, 20.0, {.longest_step_s = 0.0}); }),
                "longest_step_s"));
    CHECK(holds(refused([&] { BedField(sand, shell, legs, 20.0, 20.0, {}, -1.0); }), "rod_j_m_k"));
    BedField bed(sand, shell, legs, 20.0, 20.0);
    CHECK(holds(refused([&] { bed.step(-1.0, 60.0); }), "power_w"));
    CHECK(holds(refused([&] { bed.step(nothing, 60.0); }), "power_w"));
    CHECK(holds(refused([&] { bed.step(1.0, -60.0); }), "seconds"));
    CHECK(holds(refused([&] { bed.step(1.0, nothing); }), "seconds"));
    CHECK(holds(refused([&] { bed.set_air_c(1e9); }), "air_c"));
    CHECK(holds(refused([&] { bed.set_extraction_w_k(-1.0); }), "extraction_w_k"));
    CHECK(holds(refused([&] { (void)bed.at_c(0.3, 0.1); }), "radius_m"));
    CHECK(holds(refused([&] { (void)bed.at_c(0.1, 0.5); }), "height_m"));
    CHECK(holds(refused([&] { (void)bed.near_leg_c(0.3); }), "distance_m"));
    CHECK(bed.supplied_kwh() == 0.0);
}

namespace {

heatmatch::LegLayout legs_beside(double length_m, double x_m) {
    return {.legs = {{.x_m = x_m}},
            .leg_length_m = length_m,
            .radius_m = 0.004,
            .sheath_radius_m = 0.004};
}

}  // namespace

// Source: heat conduction: a source of heat cools nothing. Room is the field's error in its first
// half hour, as a share of the rise.
TEST_CASE("power in a short leg on the other side cools no sheath and no wall") {
    const heatmatch::BedFill fill = dry_sand(0.27, 0.5);
    const heatmatch::StoreShell shell = bare_cylinder(0.5, 0.7);
    for (const double ratio : {1.0, 0.5, 0.25, 0.125, 0.04}) {
        for (const double apart_m : {0.04, 0.12}) {
            CAPTURE(ratio);
            CAPTURE(apart_m);
            const std::vector<heatmatch::LegLayout> banks{legs_beside(0.5, -0.5 * apart_m),
                                                          legs_beside(0.5 * ratio, 0.5 * apart_m)};
            BedField cold(fill, shell, banks, 20.0, 20.0);
            BedField hot(fill, shell, banks, 20.0, 20.0);
            for (const double hours : {0.5, 2.0, 6.0}) {
                CAPTURE(hours);
                const std::array<double, 2> one_w{100.0, 0.0};
                const std::array<double, 2> both_w{100.0, 60.0 * ratio};
                cold.step(one_w, hours * 3600.0);
                hot.step(both_w, hours * 3600.0);
                constexpr double rounding_k = 0.05;
                constexpr double of_sheath = 0.005;
                constexpr double of_fill = 0.04;
                const double rise_k = cold.sheath_c(0) - 20.0;
                const double near_k = cold.near_leg_c(0.02, 0) - 20.0;
                CHECK(hot.sheath_c(0) > cold.sheath_c(0) - of_sheath * rise_k);
                CHECK(hot.sheath_c(1) > cold.sheath_c(1) - rounding_k);
                CHECK(hot.wall_c() > cold.wall_c() - rounding_k);
                CHECK(hot.near_leg_c(0.02, 0) > cold.near_leg_c(0.02, 0) - of_fill * near_k);
                CHECK(hot.bed_mean_c() > cold.bed_mean_c());
            }
        }
    }
}
