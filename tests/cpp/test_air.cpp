#include <cmath>
#include <initializer_list>

#include <doctest/doctest.h>

#include "heatmatch/heat/air.hpp"

using heatmatch::Air;
using heatmatch::air_at;
using heatmatch::free_convection_cylinder;

namespace {

struct TableRow {
    double t_k;
    double conductivity;
    double viscosity;
    double prandtl;
};

// Source: Incropera, Fundamentals of Heat and Mass Transfer, table A.4, air at atmospheric
// pressure.
constexpr TableRow table_a4[] = {{300.0, 0.0263, 15.89e-6, 0.707},
                                 {400.0, 0.0338, 26.41e-6, 0.690},
                                 {500.0, 0.0407, 38.79e-6, 0.684}};

}  // namespace

// Tolerance 1.5 % for the conductivity and 3 % for the viscosity: the formulas are those of the
// standard atmosphere, the table's are others. Prandtl 4 %: its heat capacity is held constant.
TEST_CASE("air agrees with a table of a text book") {
    for (const TableRow& row : table_a4) {
        CAPTURE(row.t_k);
        const Air air = air_at(row.t_k);
        CHECK(air.conductivity_w_mk == doctest::Approx(row.conductivity).epsilon(0.015));
        CHECK(air.kinematic_viscosity_m2_s == doctest::Approx(row.viscosity).epsilon(0.03));
        CHECK(air.prandtl == doctest::Approx(row.prandtl).epsilon(0.04));
    }
}

// Source: Incropera, example 9.4: steam pipe of 0.1 m at 165 °C in air and walls at 23 °C,
// emissivity 0.85, 763 W/m by free convection and radiation. Within 2 %.
TEST_CASE("a warm pipe in still air loses the heat given in a textbook") {
    constexpr double pi = 3.14159265358979323846;
    constexpr double surface_k = 165.0 + 273.15;
    constexpr double air_k = 23.0 + 273.15;
    const double convection = free_convection_cylinder(0.1, surface_k, air_k) * (surface_k - air_k);
    const double radiation = 0.85 * 5.670374e-8 * (std::pow(surface_k, 4.0) - std::pow(air_k, 4.0));
    CHECK(pi * 0.1 * (convection + radiation) == doctest::Approx(763.0).epsilon(0.02));
}

// Source: ht 1.2.0, Nu_horizontal_cylinder_Churchill_Chu (Prandtl 0.70), with conductivity and
// viscosity of the standard atmosphere's formulas and 9.80665 m/s2: wires, rods and drums.
TEST_CASE("free convection around a cylinder agrees with an open library") {
    struct Row {
        double diameter_m;
        double surface_c;
        double air_c;
        double h_w_m2k;
    };
    for (const Row& row :
         {Row{0.002, 60, 20, 17.933467916332276}, Row{0.004, 150, 20, 16.13463281111875},
          Row{0.008, 400, 25, 15.071896334172964}, Row{0.05, 80, 20, 6.700924746932025},
          Row{0.1, 165, 23, 7.33320328559667}, Row{0.4, 40, 5, 4.680586018057648}}) {
        CAPTURE(row.diameter_m);
        CHECK(
            free_convection_cylinder(row.diameter_m, row.surface_c + 273.15, row.air_c + 273.15) ==
            doctest::Approx(row.h_w_m2k).epsilon(1e-7));
    }
}

// Source: the limit of the correlation for a vanishing temperature difference, Nu = 0.36.
TEST_CASE("without a temperature difference air conducts only") {
    const Air air = air_at(300.0);
    CHECK(free_convection_cylinder(0.004, 300.0, 300.0) ==
          doctest::Approx(0.36 * air.conductivity_w_mk / 0.004).epsilon(1e-9));
}

TEST_CASE("free convection grows with the temperature difference and shrinks with the diameter") {
    double last = 0.0;
    for (double rise_k = 0.5; rise_k < 400.0; rise_k *= 2.0) {
        const double h = free_convection_cylinder(0.004, 300.0 + rise_k, 300.0);
        CHECK(h > last);
        last = h;
    }
    CHECK(free_convection_cylinder(0.002, 350.0, 300.0) >
          free_convection_cylinder(0.008, 350.0, 300.0));
}

TEST_CASE("a wire cooler than the air absorbs heat with the coefficient of its loss") {
    CHECK(free_convection_cylinder(0.004, 300.0, 340.0) ==
          doctest::Approx(free_convection_cylinder(0.004, 340.0, 300.0)).epsilon(0.01));
}

// Source: Incropera, example on a cylinder of 12.7 mm at 128.4 °C in air of 26.2 °C and 10 m/s:
// Re 6071, Pr 0.70, Nu 40.6, h 96 W/m2K (Nu is printed in an open library's documentation, the rest
// from memory). Nu to the digits printed; h within 4 %: our air is the standard atmosphere's.
TEST_CASE("a cylinder in cross flow loses the heat given in a textbook") {
    CHECK(heatmatch::cross_flow_nusselt(6071.0, 0.7) ==
          doctest::Approx(40.63708594124974).epsilon(1e-12));
    CHECK(heatmatch::convection_cylinder(0.0127, 128.4 + 273.15, 26.2 + 273.15, 10.0) ==
          doctest::Approx(96.0).epsilon(0.04));
}

// Source: the limits of adding cubes: each part alone where the other is small.
TEST_CASE("wind adds to free convection") {
    const double free = free_convection_cylinder(0.004, 340.0, 300.0);
    CHECK(heatmatch::convection_cylinder(0.004, 340.0, 300.0, 0.0) == free);
    double last = free;
    for (const double wind : {0.001, 0.01, 0.1, 1.0, 10.0}) {
        const double h = heatmatch::convection_cylinder(0.004, 340.0, 300.0, wind);
        CHECK(h > last);
        last = h;
    }
    const Air air = air_at(320.0);
    const double alone =
        heatmatch::cross_flow_nusselt(10.0 * 0.004 / air.kinematic_viscosity_m2_s, air.prandtl) *
        air.conductivity_w_mk / 0.004;
    CHECK(last == doctest::Approx(alone).epsilon(1e-3));
}
