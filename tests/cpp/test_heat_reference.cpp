#include "figure.hpp"
#include "zero_k.hpp"

// Published and measured heat, row by row; sources and tolerances are in the files.
#include "bed_examples.hpp"
#include "reference_csv.hpp"
#include "within.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <numbers>
#include <sstream>

#include <doctest/doctest.h>

#include "heatmatch/heat/air.hpp"
#include "heatmatch/heat/bed_charge.hpp"
#include "heatmatch/heat/packed_bed.hpp"
#include "heatmatch/heat/space_balance.hpp"

namespace {

using Inputs = std::map<std::string, double>;

Inputs inputs_of(const ReferenceRow& row) {
    Inputs inputs;
    std::istringstream text(row.at("inputs"));
    for (std::string pair; std::getline(text, pair, ';');) {
        const auto equals = pair.find('=');
        inputs[pair.substr(0, equals)] = std::stod(pair.substr(equals + 1));
    }
    return inputs;
}

/// `rel`, `abs` or `rise` of the row's tolerance.
bool agrees(const ReferenceRow& row, const Inputs& inputs, double value) {
    std::istringstream text(row.at("tolerance"));
    std::string kind;
    double size = 0.0;
    text >> kind >> size;
    const double expected = number(row, "expected");
    if (kind == "rel") return within(value, expected, size);
    if (kind == "abs") return within_abs(value, expected, size);
    REQUIRE(kind == "rise");
    return within(value - inputs.at("Ta_C"), expected - inputs.at("Ta_C"), size);
}

/// Checks all rows of a quantity.
void check_rows(const std::string& file, const std::string& quantity,
                const std::function<double(const Inputs&)>& value_of) {
    int rows = 0;
    for (const ReferenceRow& row : read_reference(file)) {
        if (row.at("quantity") != quantity) continue;
        CAPTURE(row.at("case"));
        const Inputs inputs = inputs_of(row);
        CHECK(agrees(row, inputs, value_of(inputs)));
        ++rows;
    }
    CHECK(rows > 0);
}

double heat_capacity_of_sand(double t_k) {
    return sand_of(0.27).heat_capacity.at(t_k);
}

/// One leg in a great bed, as the row says; from the air on, without the rod's own heat.
heatmatch::BedCharge line_of(const Inputs& in) {
    heatmatch::BedCharge line = line_source(in.at("k"), in.at("rho") * in.at("cp"), 0.0);
    line.legs.radius_m = in.at("r_m");
    line.legs.sheath_radius_m = in.at("r_m");
    line.hours = in.at("t_s") / 3600.0;
    return line;
}

}  // namespace

TEST_CASE("reference rows of fills") {
    check_rows("heat_open.csv", "bed_conductivity", [](const Inputs& in) {
        return heatmatch::packed_bed_conductivity({.porosity = in.at("porosity"),
                                                   .grain_mm = in.at("d_mm"),
                                                   .solid_w_mk = in.at("k_solid"),
                                                   .emissivity = in.at("eps"),
                                                   .shape = in.at("Cf"),
                                                   .contact = in.at("phi")},
                                                  in.at("T_K"));
    });
    check_rows("heat_open.csv", "long_cylinder_linear_k", [](const Inputs& in) {
        const auto k_at = [&](double t_c) {
            return in.at("k0") * (1.0 + in.at("beta_per_K") * (t_c - 20.0));
        };
        const auto k = heatmatch::Conductivity::of_table({{20, k_at(20)}, {1020, k_at(1020)}});
        const double theta =
            k.theta(in.at("T_outer_C") + zero_k) +
            in.at("q_W_m") * std::log(in.at("R_m") / in.at("r0_m")) / (2.0 * std::numbers::pi);
        return k.temperature_k(theta) - zero_k;
    });
    check_rows("heat_open.csv", "quartz_mean_heat_capacity", [](const Inputs& in) {
        return sand_of(0.27).heat_capacity.mean(in.at("T1_C") + zero_k, in.at("T2_C") + zero_k);
    });
    for (const ReferenceRow& row : read_reference("heat_open.csv")) {
        if (row.at("quantity") != "quartz_heat_capacity") continue;
        CAPTURE(row.at("case"));
        const Inputs inputs = inputs_of(row);
        // The table is smeared over 540 to 600 °C, and rounded with a chord at 25 °C: 0.5 %.
        const double share = inputs.at("T_K") < 300.0 ? 0.005 : 0.02;
        CHECK(within(heat_capacity_of_sand(inputs.at("T_K")), number(row, "expected"), share));
    }
    // Source: Kiyohashi and others: the band of dry sand lies within what was measured, and begins
    // at its low end.
    double lowest = 0.0;
    double highest = 0.0;
    for (const ReferenceRow& row : read_reference("heat_open.csv")) {
        if (row.at("case") == "dry_sand_range_low") lowest = number(row, "expected");
        if (row.at("case") == "dry_sand_range_high") highest = number(row, "expected");
    }
    const heatmatch::Medium& sand = heatmatch::find_medium(starter(), "dry-sand");
    CHECK(*sand.k20_low_w_mk == lowest);
    CHECK(*sand.k20_high_w_mk < highest);
}

TEST_CASE("reference rows of walls in still air") {
    // The library holds Prandtl at 0.70 and gives Nusselt by a temperature difference: Ra from it.
    for (const ReferenceRow& row : read_reference("heat_open.csv")) {
        if (row.at("quantity") != "nusselt_vertical_plate") continue;
        CAPTURE(row.at("case"));
        const Inputs inputs = inputs_of(row);
        constexpr double surface_k = 310.0;
        constexpr double air_k = 300.0;
        const heatmatch::Air air = heatmatch::air_at(305.0);
        const double nu2 = air.kinematic_viscosity_m2_s * air.kinematic_viscosity_m2_s;
        const double height_m =
            std::cbrt(inputs.at("Ra") * nu2 / (9.80665 / 305.0 * (surface_k - air_k) * 0.70));
        const double h = heatmatch::free_convection_plate(height_m, surface_k, air_k);
        CHECK(agrees(row, inputs, h * height_m / air.conductivity_w_mk));
    }
    check_rows("heat_open.csv", "vertical_plate_heat", [](const Inputs& in) {
        const double h = heatmatch::free_convection_plate(in.at("height_m"), in.at("Ts_C") + zero_k,
                                                          in.at("Tinf_C") + zero_k);
        return h * in.at("height_m") * in.at("width_m") * (in.at("Ts_C") - in.at("Tinf_C"));
    });
    check_rows("heat_measured.csv", "rod_in_still_air", [](const Inputs& in) {
        const double diameter_m = in.at("D_m");
        return heatmatch::sheath_in_air_c(diameter_m,
                                          in.at("flux_W_m2") * std::numbers::pi * diameter_m,
                                          in.at("eps"), in.at("Ta_C"));
    });
}

// From a quarter of an hour on a line source and the logarithm of the closed form are alike: 1 %,
// in place of the rows' own for the exact function. Early, the heated cylinder: 30 % at Fo = 1 (a
// minute and a half at 8 mm, where the rod's own heat rules), 5 % at 10, 1 % at 100.
TEST_CASE("reference rows of lines and cylinders in a great bed") {
    int rows = 0;
    for (const ReferenceRow& row : read_reference("heat_open.csv")) {
        const Inputs inputs = inputs_of(row);
        CAPTURE(row.at("case"));
        if (row.at("quantity") == "line_source") {
            const double power_w = inputs.at("q_W_m") * 20.0;
            const double at_c = bed_temperatures(line_of(inputs), power_w).sheath_c;
            CHECK(within(at_c - 20.0, number(row, "expected"), 0.01));
            ++rows;
        }
        if (row.at("quantity") == "cylinder_source") {
            const double fourier = inputs.at("Fo");
            heatmatch::BedCharge line = line_source(0.3, 1e6, 0.0);
            line.hours = fourier * 0.004 * 0.004 * 1e6 / 0.3 / 3600.0;
            const double rise_k = bed_temperatures(line, 100.0 * 20.0).sheath_c - 20.0;
            CHECK(within(rise_k * 0.3 / 100.0, number(row, "expected"),
                         fourier < 5.0    ? 0.30
                         : fourier < 50.0 ? 0.05
                                          : 0.01));
            ++rows;
        }
    }
    CHECK(rows >= 5);
}

TEST_CASE("reference rows of sheaths in a bed") {
    check_rows("heat_open.csv", "hottest_sheath", [](const Inputs& in) {
        heatmatch::BedCharge bed =
            bed_of(bright_store(in.at("bed_D_m"), in.at("bed_H_m")),
                   rod_of(in.at("leg_L_m"), static_cast<int>(in.at("legs")),
                          in.count("spacing_m") > 0 ? in.at("spacing_m") : 0.05),
                   in.at("k20"), in.at("t_h"), in.at("Ta_C"));
        bed.fill = sand_of(in.at("k20"), in.at("grain_mm"));
        return bed_temperatures(bed, in.at("P_W")).sheath_c;
    });
}

TEST_CASE("a greenhouse is warmer by the rise of its balance") {
    check_rows("heat_open.csv", "space_lift", [](const Inputs& in) {
        const heatmatch::SpaceBalance space{
            .cover_w_k = in.at("U") * in.at("A_cover_m2"),
            .air_w_k = heatmatch::air_wh_m3k * in.at("ach") * in.at("volume_m3")};
        return space.lift_k(in.at("heat_W"));
    });
}

// The closed form is the middle of the hottest leg, far from the surface; measured was the mean
// over a length that begins 19 mm below it. By the file's own words the one lies 7 % (1 h) to 23 %
// (168 h) above the other; so from 0.95 to 1.30 of what was measured.
TEST_CASE("a heated pipe in a tank of sand is about as warm as measured") {
    std::string line;
    int rows = 0;
    for (const ReferenceRow& row : read_reference("heat_measured.csv")) {
        if (row.at("quantity") != "wall_mean_rise") continue;
        const Inputs in = inputs_of(row);
        heatmatch::BedCharge tank =
            bed_of(bright_store(1.4, 1.4), rod_of(in.at("L_m"), 1, 0.05), 0.27, 1.0);
        const heatmatch::BedCharge great = line_of(in);
        tank.fill = great.fill;
        tank.legs.radius_m = in.at("r_m");
        tank.legs.sheath_radius_m = in.at("r_m");
        tank.hours = great.hours;
        tank.rod_j_m_k = 0.0;  // net heat
        const double rise_k =
            bed_temperatures(tank, in.at("q_W_m") * in.at("L_m")).sheath_c - tank.air_c;
        const double share = rise_k / number(row, "expected");
        CAPTURE(row.at("case"));
        CAPTURE(rise_k);
        CHECK(share > 0.95);
        CHECK(share < 1.30);
        line += ' ' + heatmatch::format_number(100.0 * (share - 1.0), 2);
        ++rows;
    }
    figure("middle of a heated pipe in sand over its measured mean, 1 to 168 h [%]:", line);
    CHECK(rows >= 5);
}
