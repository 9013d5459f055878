#include "bed_3d.hpp"
#include "exact_conduction.hpp"
#include "heat_beds.hpp"

#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include <doctest/doctest.h>

// The yardstick of the closed form is itself measured here.
TEST_SUITE_BEGIN("numerical");

namespace {

constexpr double k_w_mk = 0.3;
constexpr double j_kgk = 800.0;
constexpr double density = 1550.0;
constexpr double diffusivity = k_w_mk / (density * j_kgk);

Bed3dMesh finer(double factor) {
    return {.near_m = 0.014 * factor,
            .growth = 1.0 + 0.1 * factor,
            .high_m = 0.020 * factor,
            .first_step_s = 30.0 * factor,
            .longest_step_s = 600.0 * factor};
}

double share_lost_from_sight(const Bed3d& bed) {
    return (bed.supplied_j() - bed.stored_j() - bed.lost_j()) / bed.supplied_j();
}

}  // namespace

// Source: Carslaw & Jaeger, section 10.4.
TEST_CASE("an endless line in three dimensions rises as the exponential integral") {
    const double radius_m = 0.004;
    Bed3d bed({.fill = constant_fill(k_w_mk, j_kgk, density),
               .shell = wrapped_cylinder(0.7, 0.3, 1.0, 0.0),
               .legs = upright_legs(1, 0.3, 0.0)});
    double before_h = 0.0;
    for (const double hours : {1.0, 3.0, 5.0}) {
        bed.run(300.0 * 0.3, (hours - before_h) * 3600.0);
        before_h = hours;
        const double exact = line_rise_k(300.0, k_w_mk, diffusivity, radius_m, hours * 3600.0);
        const double error = (bed.sheath_c() - 20.0) / exact - 1.0;
        CHECK(std::fabs(error) < 0.012);
    }
    // The value of the reference table: 300 W/m, 3 h.
    CHECK(line_rise_k(300.0, k_w_mk, diffusivity, radius_m, 10800.0) ==
          doctest::Approx(470.003445).epsilon(1e-6));
}

// Source: Carslaw & Jaeger, section 10.4, added up along the line.
TEST_CASE("one, two and four legs of finite length add up before heat reaches the wall") {
    const double length_m = 0.4;
    const double spacing_m = 0.06;
    for (const int legs : {1, 2, 4}) {
        Bed3d bed({.fill = constant_fill(k_w_mk, j_kgk, density),
                   .shell = wrapped_cylinder(0.7, 0.9, 1.0, 1.0),
                   .legs = upright_legs(legs, length_m, spacing_m)});
        const double w_m = 200.0;
        double before_h = 0.0;
        for (const double hours : {1.0, 3.0, 5.0}) {
            bed.run(w_m * length_m * legs, (hours - before_h) * 3600.0);
            before_h = hours;
            const auto rise = [&](double distance_m) {
                return finite_line_rise_k(w_m, k_w_mk, diffusivity, length_m, distance_m,
                                          hours * 3600.0);
            };
            double exact = rise(0.004);
            if (legs > 1) exact += rise(spacing_m);
            if (legs > 2) exact += rise(spacing_m) + rise(spacing_m * std::numbers::sqrt2);
            const double error = (bed.sheath_c() - 20.0) / exact - 1.0;
            CHECK(std::fabs(error) < 0.012);
        }
    }
}

// Source: Carslaw & Jaeger, sections 7.6, 3.11 and 1.15 (a short cylinder is a product).
TEST_CASE("a hot cylinder cools as the series predict, with a wall of square cells or not") {
    const double radius_m = 0.2;
    const double half_m = 0.225;
    const double side_u = 6.0;
    const double end_u = 3.0;
    const Bed3dStore store{.fill = constant_fill(k_w_mk, j_kgk, density),
                           .shell = wrapped_cylinder(2.0 * radius_m, 2.0 * half_m, side_u, end_u),
                           .legs = upright_legs(2, 0.3, 0.06),
                           .air_c = 20.0,
                           .start_c = 120.0};
    Bed3d bed(store, finer(1.0));
    Bed3d fine(store, finer(0.5));
    double before_h = 0.0;
    for (const double hours : {2.0, 10.0}) {
        bed.run(0.0, (hours - before_h) * 3600.0);
        fine.run(0.0, (hours - before_h) * 3600.0);
        before_h = hours;
        const double at = diffusivity * hours * 3600.0;
        const double exact = cylinder_left(side_u * radius_m / k_w_mk, at / (radius_m * radius_m)) *
                             slab_left(end_u * half_m / k_w_mk, at / (half_m * half_m));
        const double off = (bed.bed_mean_c() - 20.0) / 100.0 - exact;
        const double fine_off = (fine.bed_mean_c() - 20.0) / 100.0 - exact;
        CHECK(std::fabs(off) < 0.008);
        CHECK(std::fabs(fine_off) < 0.6 * std::fabs(off));
    }
    CHECK(bed.lost_j() == doctest::Approx(-bed.stored_j()).epsilon(1e-6));
}

// Source: Carslaw & Jaeger, section 16.2 (image of a line in a cylinder), with the Kirchhoff
// variable of section 1.6.
TEST_CASE("legs off the axis reach the steady state of their images for any k(T)") {
    const double radius_m = 0.15;
    const double height_m = 0.30;
    const double half_m = 0.03;
    const double w_m = 150.0;
    const heatmatch::BedFill fill = dry_sand(0.27, 0.5);
    Bed3d bed({.fill = fill,
               .shell = wrapped_cylinder(2.0 * radius_m, height_m, 1e5, 0.0),
               .legs = upright_legs(2, height_m, 2.0 * half_m)},
              {.longest_step_s = 3.6e4});
    bed.run(2.0 * w_m * height_m, 300.0 * 3600.0);
    const double own = std::log((radius_m * radius_m - half_m * half_m) / (radius_m * 0.004));
    const double other =
        std::log((radius_m * radius_m + half_m * half_m) / (2.0 * half_m * radius_m));
    const double theta =
        fill.conductivity.theta(293.15) + w_m / (2.0 * std::numbers::pi) * (own + other);
    const double exact_c = fill.conductivity.temperature_k(theta) - 273.15;
    CHECK(std::fabs(bed.sheath_c() - exact_c) < 0.01 * (exact_c - 20.0));
}

TEST_CASE("no heat is lost from sight, and finer meshes and steps change little") {
    struct Case {
        std::string name;
        int legs;
        double diameter_m, height_m, length_m, spacing_m, power_w, hours;
    };
    const std::vector<Case> cases = {{"drum, 1 leg", 1, 0.58, 0.60, 0.40, 0.0, 150.0, 6.0},
                                     {"drum, 2 legs", 2, 0.40, 0.45, 0.30, 0.06, 180.0, 4.0},
                                     {"pot, 4 legs", 4, 0.26, 0.28, 0.20, 0.05, 200.0, 3.0}};
    for (const Case& at : cases) {
        const Bed3dStore store{.fill = dry_sand(0.27, 0.5),
                               .shell = bare_cylinder(at.diameter_m, at.height_m),
                               .legs = upright_legs(at.legs, at.length_m, at.spacing_m)};
        Bed3d coarse(store, finer(1.0));
        Bed3d fine(store, finer(0.5));
        coarse.run(at.power_w, at.hours * 3600.0);
        fine.run(at.power_w, at.hours * 3600.0);
        const double sheath = (coarse.sheath_c() - 20.0) / (fine.sheath_c() - 20.0) - 1.0;
        CHECK(std::fabs(share_lost_from_sight(coarse)) < 1e-5);
        CHECK(std::fabs(sheath) < 0.01);
        CHECK(std::fabs(coarse.wall_c() - fine.wall_c()) < 0.03 * (fine.wall_c() - 20.0) + 0.2);
        CHECK(coarse.volume_m3() == doctest::Approx(store.shell.volume_m3).epsilon(1e-9));
        CHECK(coarse.side_m2() == doctest::Approx(store.shell.side_m2).epsilon(1e-9));
    }
}

TEST_SUITE_END();
