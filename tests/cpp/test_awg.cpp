#include "reference_csv.hpp"

#include <string>

#include <doctest/doctest.h>

#include "heatmatch/base/awg.hpp"

using heatmatch::area_to_awg;
using heatmatch::awg_area_mm2;
using heatmatch::awg_diameter_mm;
using heatmatch::awg_label;

// Source: ASTM B258 and reproductions of it; tests/reference/wire_open.csv tells row by row.
TEST_CASE("gauge sizes agree with the standard's table") {
    int compared = 0;
    for (const ReferenceRow& row : read_reference("wire_open.csv")) {
        CAPTURE(row.at("case"));
        const std::string& quantity = row.at("quantity");
        if (quantity != "diameter" && quantity != "area") continue;
        const double awg = number(row, "awg");
        const double found = quantity == "area" ? awg_area_mm2(awg) : awg_diameter_mm(awg);
        CHECK(found == doctest::Approx(number(row, "expected")).epsilon(number(row, "tolerance")));
        ++compared;
    }
    CHECK(compared == 11);
}

// Source: arithmetic; six gauges double the diameter to 0.5 %, three the area (92^(6/39) = 2.005).
TEST_CASE("six gauges double the diameter and three double the area") {
    for (double awg : {0.0, 6.0, 14.0, 24.0, 30.0}) {
        CAPTURE(awg);
        CHECK(awg_diameter_mm(awg) / awg_diameter_mm(awg + 6.0) ==
              doctest::Approx(2.0).epsilon(5e-3));
        CHECK(awg_area_mm2(awg) / awg_area_mm2(awg + 3.0) == doctest::Approx(2.0).epsilon(5e-3));
    }
}

TEST_CASE("the gauge of an area is the gauge it came from") {
    for (int awg = -3; awg <= 40; ++awg) {
        CAPTURE(awg);
        CHECK(area_to_awg(awg_area_mm2(awg)) == doctest::Approx(awg).epsilon(1e-12).scale(1.0));
    }
}

TEST_CASE("gauges above one are written with a zero after the stroke") {
    CHECK(awg_label(awg_area_mm2(14.0)) == "14 AWG");
    CHECK(awg_label(awg_area_mm2(1.0)) == "1 AWG");
    CHECK(awg_label(awg_area_mm2(0.0)) == "1/0 AWG");
    CHECK(awg_label(awg_area_mm2(-1.0)) == "2/0 AWG");
    CHECK(awg_label(awg_area_mm2(-3.0)) == "4/0 AWG");
    CHECK(awg_label(awg_area_mm2(40.0)) == "40 AWG");
}

// Source: arithmetic on the rule; the sizes of IEC 60228 lie at 17.0, 15.2, 13.2, 11.2 and 9.4.
TEST_CASE("a metric size is named by the nearest gauge") {
    CHECK(awg_label(1.0) == "17 AWG");
    CHECK(awg_label(1.5) == "15 AWG");
    CHECK(awg_label(2.5) == "13 AWG");
    CHECK(awg_label(4.0) == "11 AWG");
    CHECK(awg_label(6.0) == "9 AWG");
}
