#include "bed_3d.hpp"
#include "error_spread.hpp"
#include "exact_conduction.hpp"
#include "heat_beds.hpp"
#include "random_stores.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/heat/bed_field.hpp"

// The field of a bed against series and against a solution in three dimensions. The latter takes
// k(T), cp(T) and the wall's law from the library too: it says nothing about those.
TEST_SUITE_BEGIN("numerical");

namespace {

using heatmatch::BedField;

constexpr double no_rods = 0.0;  // the solution in three dimensions has none

heatmatch::LegLayout legs_at(double length_m, const std::vector<heatmatch::LegLayout::Leg>& legs) {
    return {.legs = legs, .leg_length_m = length_m, .radius_m = 0.004, .sheath_radius_m = 0.004};
}

/// Eight on a circle, 45 degrees apart to within half a degree: 5, 12 and 13 are a right triangle,
/// so that a lattice in three dimensions meets all of them.
heatmatch::LegLayout eight_around(double length_m, double radius_m) {
    std::vector<heatmatch::LegLayout::Leg> legs;
    for (const double x : {-12.0, -5.0, 5.0, 12.0}) {
        const double y = std::fabs(x) > 6.0 ? 5.0 : 12.0;
        for (const double side : {-1.0, 1.0}) {
            legs.push_back({.x_m = radius_m * x / 13.0, .y_m = side * radius_m * y / 13.0});
        }
    }
    return legs_at(length_m, legs);
}

/// Two rows of four, 90 mm apart.
heatmatch::LegLayout two_rows(double length_m) {
    std::vector<heatmatch::LegLayout::Leg> legs;
    for (const double x_m : {-0.135, -0.045, 0.045, 0.135}) {
        for (const double y_m : {-0.045, 0.045}) legs.push_back({.x_m = x_m, .y_m = y_m});
    }
    return legs_at(length_m, legs);
}

struct Release {
    std::string name{};
    heatmatch::StoreShell shell{};
    heatmatch::LegLayout legs{};
    double power_w = 0.0;
    double near_m = 0.014;  //!< of the mesh in three dimensions
};

/// Heat that leaves in three dimensions, over a minute [W].
double loss_of(Bed3d& bed) {
    const double before_j = bed.lost_j();
    bed.run(0.0, 60.0);
    return (bed.lost_j() - before_j) / 60.0;
}

}  // namespace

// Source: Carslaw & Jaeger, sections 7.6 and 3.11, by the series of exact_conduction.hpp.
TEST_CASE("infinite and finite cylinders cool as their series predict") {
    const double k = 0.3;
    const double radius_m = 0.15;
    const double diffusivity = k / (1550.0 * 800.0);
    const double side_u = 5.0;  // Bi 2.5
    for (const double end_u : {0.0, 4.0}) {
        const double height_m = 0.35;
        BedField bed(constant_fill(k, 800.0, 1550.0),
                     wrapped_cylinder(2.0 * radius_m, height_m, side_u, end_u),
                     upright_legs(1, 0.25, 0.0), 20.0, 120.0, {}, no_rods);
        double before_s = 0.0;
        for (const double fourier : {0.05, 0.1, 0.2, 0.4, 0.8}) {
            const double seconds = fourier * radius_m * radius_m / diffusivity;
            bed.step(0.0, seconds - before_s);
            before_s = seconds;
            const double half_m = 0.5 * height_m;
            const double ends = end_u > 0.0 ? slab_left(end_u * half_m / k,
                                                        diffusivity * seconds / (half_m * half_m))
                                            : 1.0;
            const double exact = cylinder_left(side_u * radius_m / k, fourier) * ends;
            const double left = (bed.bed_mean_c() - 20.0) / 100.0;
            CHECK(std::fabs(left - exact) < 0.003);
            CHECK(std::fabs(left / exact - 1.0) < 0.02);
        }
    }
}

// Source: the exact order of the scheme; a field that is twice as fine errs a quarter as much.
TEST_CASE("a field's error falls with the square of its cells") {
    const auto with = [](std::size_t times, bool heated) {
        const heatmatch::BedFieldMesh mesh{.across = 12 * times, .high = 18 * times};
        BedField bed(dry_sand(0.27, 0.5), bare_cylinder(0.34, 0.40),
                     upright_legs(heated ? 2 : 1, 0.28, 0.06), 20.0, heated ? 20.0 : 200.0, mesh,
                     no_rods);
        if (heated) bed.step(200.0, 5.0 * 3600.0);
        bed.step(0.0, 4.0 * 3600.0);
        return std::array{bed.bed_mean_c(), bed.at_c(0.0, 0.2), bed.loss_w()};
    };
    for (const bool heated : {false, true}) {
        const auto once = with(1, heated);
        const auto twice = with(2, heated);
        const auto four = with(4, heated);
        for (std::size_t i = 0; i < once.size(); ++i) {
            const double order = std::log2((once[i] - twice[i]) / (twice[i] - four[i]));
            CHECK(order > 1.4);
            CHECK(order < 2.8);
            CHECK(std::fabs(once[i] / four[i] - 1.0) < 0.02);
        }
    }
}

// Source: the solver of bed_3d.hpp.
TEST_CASE("a field gives its heat back as three dimensions do") {
    const std::vector<Release> releases = {
        {"pot, hairpin", bare_cylinder(0.27, 0.27), upright_legs(2, 0.22, 0.05), 130.0},
        {"drum, 8 legs around", bare_cylinder(0.57, 0.85), eight_around(0.70, 0.14), 960.0, 0.0108},
        {"drum, two rows of 4", bare_cylinder(0.58, 0.80), two_rows(0.50), 960.0},
        {"drum, 2 legs 300 mm apart", bare_cylinder(0.58, 0.80), upright_legs(2, 0.50, 0.30),
         240.0}};
    for (const Release& release : releases) {
        const Bed3dStore store{.fill = dry_sand(0.27, 0.5),
                               .shell = release.shell,
                               .legs = release.legs,
                               .air_c = 5.0,
                               .start_c = 5.0};
        Bed3d bed(store, {.near_m = release.near_m});
        BedField field(store.fill, store.shell, store.legs, 5.0, 5.0, {}, no_rods);
        BedField with_rods(store.fill, store.shell, store.legs, 5.0, 5.0);
        double charged_h = 0.0;
        for (const double hours : {1.0, 3.0, 5.0}) {
            const double seconds = (hours - charged_h) * 3600.0;
            charged_h = hours;
            bed.run(release.power_w, seconds);
            field.step(release.power_w, seconds);
            with_rods.step(release.power_w, seconds);
            const double off = (field.sheath_c() - bed.sheath_c()) / (bed.sheath_c() - 5.0);
            CHECK(std::fabs(off) < 0.03);
        }
        // The rods' heat no longer counts at the end of a charge.
        CHECK(std::fabs(with_rods.sheath_c() - bed.sheath_c()) < 0.03 * (bed.sheath_c() - 5.0));
        CHECK(std::fabs(field.wall_c() - bed.wall_c()) < 2.0);
        CHECK(std::fabs(field.wall_mean_c() - bed.wall_mean_c()) < 1.5);
        double before_h = 0.0;
        std::vector<double> exact_w;
        std::vector<double> field_w;
        const std::vector<double> times_h = {1.0, 4.0, 8.0, 14.0, 24.0};
        for (const double hours : times_h) {
            bed.run(0.0, (hours - before_h) * 3600.0 - 60.0);
            exact_w.push_back(loss_of(bed));
            field.step(0.0, (hours - before_h) * 3600.0);
            field_w.push_back(field.loss_w());
            before_h = hours;
        }
        // Below 3 % of the peak a share of next to nothing says little: there of 3 % of the peak.
        const double least_w = 0.03 * *std::ranges::max_element(exact_w);
        for (std::size_t i = 0; i < times_h.size(); ++i) {
            const double off = (field_w[i] - exact_w[i]) / std::max(exact_w[i], least_w);
            CHECK(std::fabs(off) < 0.06);
        }
    }
}

// Source: the solver of bed_3d.hpp.
TEST_CASE("the field's sheath and wall stay near three dimensions, 1 to 8 hours") {
    const std::vector<double> times_h = {1.0, 3.0, 5.0, 8.0};
    std::vector<ErrorSpread> sheath(times_h.size());
    std::vector<ErrorSpread> wall(times_h.size());
    std::vector<ErrorSpread> mean(times_h.size());
    std::vector<ErrorSpread> beside(times_h.size());
    for (const RandomStore& store : random_stores(20, 20240611U)) {
        const heatmatch::BedCharge& charge = store.charge;
        Bed3d bed(in_three_dimensions(charge));
        BedField field(charge.fill, charge.shell, charge.legs, charge.air_c, charge.air_c, {},
                       no_rods);
        const double half_m = 0.5 * charge.shell.height_m;
        const double probe_m = 0.7 * charge.shell.radius_m;
        double before_h = 0.0;
        for (std::size_t i = 0; i < times_h.size(); ++i) {
            const double seconds = (times_h[i] - before_h) * 3600.0;
            before_h = times_h[i];
            bed.run(store.power_w, seconds);
            field.step(store.power_w, seconds);
            const double rise_k = bed.sheath_c() - charge.air_c;
            sheath[i].add(100.0 * (field.sheath_c() - bed.sheath_c()) / rise_k, store.legs);
            wall[i].add(field.wall_c() - bed.wall_c(), store.legs);
            mean[i].add(field.bed_mean_c() - bed.bed_mean_c(), store.legs);
            if (store.legs == 4) continue;  // both axes lie between those: no mean around it
            const double around_c =
                0.5 * (bed.probe_c(true, probe_m) + bed.probe_c(false, probe_m));
            beside[i].add(field.at_c(probe_m, half_m) - around_c, store.legs);
        }
    }
    for (std::size_t i = 0; i < times_h.size(); ++i) {
        const std::string after = "field after " + std::to_string(times_h[i]).substr(0, 1) + " h, ";
        CHECK(sheath[i].smallest() > -3.0);
        CHECK(sheath[i].largest() < 3.0);
        CHECK(wall[i].smallest() > -2.0);
        CHECK(wall[i].largest() < 2.0);
        CHECK(mean[i].rms() < 1.0);
        CHECK(beside[i].smallest() > -3.0);
        CHECK(beside[i].largest() < 3.0);
    }
}

TEST_SUITE_END();
