#include "reference_csv.hpp"
#include "refusal.hpp"

#include <string>

#include <doctest/doctest.h>

#include "heatmatch/base/awg.hpp"
#include "heatmatch/base/error.hpp"
#include "heatmatch/parts/parts.hpp"

using heatmatch::check_part;
using heatmatch::conductor_diameter_mm;
using heatmatch::conductor_limit_c;
using heatmatch::InvalidInput;
using heatmatch::resistance_ohm_per_m;
using heatmatch::Wire;

namespace {

Wire copper(double area_mm2, int strands) {
    return {.id = "tail",
            .label = "Tail",
            .conductor = heatmatch::ConductorMetal::copper,
            .plating = heatmatch::Plating::bare,
            .area_mm2 = area_mm2,
            .strands = strands,
            .insulation = "silicone",
            .provenance = {.source = "label", .source_kind = heatmatch::SourceKind::nameplate}};
}

double area_of(const ReferenceRow& row) {
    return row.at("awg").empty() ? number(row, "area_mm2")
                                 : heatmatch::awg_area_mm2(number(row, "awg"));
}

}  // namespace

// Source: IEC 60028 and NEC chapter 9 table 8; tests/reference/wire_open.csv tells row by row.
TEST_CASE("copper resistance agrees with the published tables") {
    int compared = 0;
    for (const ReferenceRow& row : read_reference("wire_open.csv")) {
        CAPTURE(row.at("case"));
        if (row.at("quantity") != "resistance") continue;
        const Wire wire = copper(area_of(row), static_cast<int>(number(row, "strands")));
        const double thousand_feet_m = 304.8;
        const double length_m = row.at("unit") == "ohm/kft" ? thousand_feet_m : 1000.0;
        CHECK(resistance_ohm_per_m(wire, number(row, "t_c")) * length_m ==
              doctest::Approx(number(row, "expected")).epsilon(number(row, "tolerance")));
        ++compared;
    }
    CHECK(compared == 3);
}

// Source: IEC 60228 gives the largest resistance a conductor of the nominal size may have; copper
// of exactly that size has a few per cent less. Where the figure is printed, it wins.
TEST_CASE("a conductor stays below the standard's largest resistance unless that is printed") {
    int compared = 0;
    for (const ReferenceRow& row : read_reference("wire_open.csv")) {
        if (row.at("quantity") != "resistance_max") continue;
        Wire wire = copper(area_of(row), static_cast<int>(number(row, "strands")));
        const double largest = number(row, "expected");
        const double computed = 1000.0 * resistance_ohm_per_m(wire, 20.0);
        CHECK(computed < largest);
        CHECK(computed > 0.93 * largest);
        wire.resistance_ohm_per_km = largest;
        CHECK(1000.0 * resistance_ohm_per_m(wire, 20.0) == doctest::Approx(largest));
        // Source: arithmetic, 4.61 (1 + 0.00393 (90 - 20)).
        CHECK(1000.0 * resistance_ohm_per_m(wire, 90.0) == doctest::Approx(5.878211).epsilon(1e-6));
        ++compared;
    }
    CHECK(compared == 1);
}

// Source: IEC 60028, 0.00393 per kelvin on the value at 20 °C; arithmetic.
TEST_CASE("resistance is linear in temperature and falls with the area") {
    const Wire wire = copper(4.0, 1);
    const double at_20 = resistance_ohm_per_m(wire, 20.0);
    CHECK(at_20 == doctest::Approx(1.0 / 58.0 / 4.0));
    CHECK(resistance_ohm_per_m(wire, 120.0) / at_20 == doctest::Approx(1.393));
    CHECK(resistance_ohm_per_m(wire, -30.0) / at_20 == doctest::Approx(0.8035));
    CHECK(resistance_ohm_per_m(copper(8.0, 1), 20.0) == doctest::Approx(0.5 * at_20));
}

// Source: the library's documentation (nickel-clad 1.4 times copper; nickel 0.090 ohm mm2/m and
// 0.0061 per kelvin, from memory).
TEST_CASE("other metals conduct worse than copper") {
    Wire wire = copper(4.0, 1);
    const double of_copper = resistance_ohm_per_m(wire, 20.0);
    wire.conductor = heatmatch::ConductorMetal::nickel_clad_copper;
    CHECK(resistance_ohm_per_m(wire, 20.0) == doctest::Approx(1.4 * of_copper));
    wire.conductor = heatmatch::ConductorMetal::nickel;
    CHECK(resistance_ohm_per_m(wire, 20.0) == doctest::Approx(0.090 / 4.0));
    CHECK(resistance_ohm_per_m(wire, 420.0) == doctest::Approx(0.090 / 4.0 * 3.44));
    wire.conductor = heatmatch::ConductorMetal::aluminium;
    CHECK(resistance_ohm_per_m(wire, 20.0) / of_copper == doctest::Approx(1.64).epsilon(0.01));
}

// Source: ASTM B33, B298, B355 and common practice: long-term ceilings of the strands.
TEST_CASE("the plating sets the ceiling of the conductor") {
    Wire wire = copper(2.5, 19);
    CHECK(conductor_limit_c(wire) == 150.0);
    wire.plating = heatmatch::Plating::tin;
    CHECK(conductor_limit_c(wire) == 150.0);
    wire.plating = heatmatch::Plating::silver;
    CHECK(conductor_limit_c(wire) == 200.0);
    wire.plating = heatmatch::Plating::nickel;
    CHECK(conductor_limit_c(wire) == 260.0);
    wire.plating = heatmatch::Plating::bare;
    wire.conductor = heatmatch::ConductorMetal::nickel_clad_copper;
    CHECK(conductor_limit_c(wire) == 450.0);
    wire.conductor = heatmatch::ConductorMetal::nickel;
    CHECK(conductor_limit_c(wire) == 450.0);
    wire.conductor = heatmatch::ConductorMetal::aluminium;
    CHECK(conductor_limit_c(wire) == 90.0);
}

// Source: arithmetic; a solid 14 AWG has 1.628 mm, NEC chapter 9 table 8 gives 1.85 mm stranded.
TEST_CASE("strands fill three quarters of their circle") {
    CHECK(conductor_diameter_mm(copper(heatmatch::awg_area_mm2(14), 1)) ==
          doctest::Approx(1.628).epsilon(1e-3));
    CHECK(conductor_diameter_mm(copper(heatmatch::awg_area_mm2(14), 7)) ==
          doctest::Approx(1.85).epsilon(0.02));
}

TEST_CASE("a plating belongs to copper strands") {
    Wire wire = copper(2.5, 19);
    wire.conductor = heatmatch::ConductorMetal::nickel;
    wire.plating = heatmatch::Plating::silver;
    CHECK(holds(part_refusal(wire), "plating = silver must be bare for nickel"));
    wire.plating = heatmatch::Plating::bare;
    CHECK(part_refusal(wire) == "(accepted)");
}

TEST_CASE("an ampacity comes with the temperatures of its table") {
    Wire wire = copper(4.0, 7);
    wire.ampacity_a = 40.0;
    CHECK(holds(part_refusal(wire), "ampacity_ambient_c and ampacity_conductor_c"));
    wire.ampacity_ambient_c = 90.0;
    wire.ampacity_conductor_c = 60.0;
    CHECK(holds(part_refusal(wire), "check whether the two are exchanged"));
    wire.ampacity_ambient_c = 30.0;
    wire.ampacity_conductor_c = 90.0;
    CHECK(part_refusal(wire) == "(accepted)");
}

TEST_CASE("a wire needs an area and an insulation") {
    Wire wire = copper(0.0, 7);
    CHECK(holds(part_refusal(wire), "area_mm2 = 0 mm2 must be >= 0.01 mm2"));
    wire.area_mm2 = 4.0;
    wire.insulation.clear();
    CHECK(holds(part_refusal(wire), "insulation = (missing)"));
    wire.insulation = "silicone";
    CHECK(holds(word_refusal(wire, "conductor", "iron"),
                "copper, nickel-clad copper, nickel or aluminium"));
}
