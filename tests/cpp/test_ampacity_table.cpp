#include <algorithm>
#include <array>
#include <string>

#include <doctest/doctest.h>

#include "heatmatch/base/awg.hpp"
#include "heatmatch/parts/ampacity_table.hpp"
#include "heatmatch/text/starter.hpp"

using heatmatch::AmpacityColumn;
using heatmatch::AmpacityGroup;
using heatmatch::LayingMethod;
using heatmatch::tabulated_ampacity;
using heatmatch::WiringCode;

namespace {

double nec_table_a(double awg, LayingMethod method, double rating_c,
                   AmpacityGroup group = AmpacityGroup::single) {
    const auto found =
        tabulated_ampacity(WiringCode::nec, method, group, heatmatch::awg_area_mm2(awg), rating_c);
    return found ? found->current_a : 0.0;
}

double iec_table_a(double mm2, LayingMethod method, double rating_c,
                   AmpacityGroup group = AmpacityGroup::single) {
    const auto found = tabulated_ampacity(WiringCode::iec, method, group, mm2, rating_c);
    return found ? found->current_a : 0.0;
}

}  // namespace

// Source: NEC 2023, Table 310.16, copper (nec-310-16).
TEST_CASE("in a raceway the columns of 60, 75 and 90 °C are those of the code") {
    const LayingMethod raceway = LayingMethod::raceway;
    struct Row {
        double awg, at_60, at_75, at_90;
    };
    for (const Row& row :
         {Row{14, 15, 20, 25}, Row{12, 20, 25, 30}, Row{10, 30, 35, 40}, Row{8, 40, 50, 55},
          Row{4, 70, 85, 95}, Row{0, 125, 150, 170}, Row{-3, 195, 230, 260}}) {
        CAPTURE(row.awg);
        CHECK(nec_table_a(row.awg, raceway, 60.0) == row.at_60);
        CHECK(nec_table_a(row.awg, raceway, 75.0) == row.at_75);
        CHECK(nec_table_a(row.awg, raceway, 90.0) == row.at_90);
        CHECK(nec_table_a(row.awg, raceway, 89.0) == row.at_75);
        CHECK(nec_table_a(row.awg, LayingMethod::earth, 90.0) == row.at_90);
    }
    CHECK(nec_table_a(18.0, raceway, 90.0) == 14.0);
    // The table has no 18 AWG for 75 °C: none is made up.
    CHECK(nec_table_a(18.0, raceway, 75.0) == 0.0);
    CHECK(nec_table_a(14.0, raceway, 59.0) == 0.0);
}

// Source: NEC 2023, Tables 310.17, 310.18, 310.19 (nec-310-17, nec-310-18, nec-310-19).
TEST_CASE("free air and high-temperature wires have their own columns") {
    CHECK(nec_table_a(10.0, LayingMethod::free_air, 90.0) == 55.0);
    CHECK(nec_table_a(10.0, LayingMethod::raceway, 90.0) == 40.0);
    CHECK(nec_table_a(14.0, LayingMethod::free_air, 60.0) == 25.0);
    CHECK(nec_table_a(14.0, LayingMethod::raceway, 150.0) == 34.0);
    CHECK(nec_table_a(12.0, LayingMethod::raceway, 200.0) == 45.0);
    CHECK(nec_table_a(14.0, LayingMethod::raceway, 260.0) == 39.0);
    CHECK(nec_table_a(14.0, LayingMethod::free_air, 180.0) == 46.0);
    CHECK(nec_table_a(12.0, LayingMethod::free_air, 250.0) == 78.0);
    const auto hot = tabulated_ampacity(WiringCode::nec, LayingMethod::raceway,
                                        AmpacityGroup::single, heatmatch::awg_area_mm2(14), 180.0);
    REQUIRE(hot);
    CHECK(hot->ambient_c == 40.0);
    CHECK(hot->conductor_c == 150.0);
    CHECK(hot->source == "nec-310-18");
    // Hot wires have no column for the earth: that of 90 °C holds there.
    CHECK(nec_table_a(14.0, LayingMethod::earth, 200.0) == 25.0);
}

// Source: NEC 2023, Table 690.31(A)(3)(1) (nec-690-31); Table 400.5(A)(1) column B (nec-400-5).
TEST_CASE("PV wire of 105 °C and cords have their own table") {
    const auto pv = AmpacityGroup::pv_wire;
    CHECK(nec_table_a(12.0, LayingMethod::raceway, 105.0, pv) == 36.0);
    CHECK(nec_table_a(10.0, LayingMethod::raceway, 125.0, pv) == 50.0);
    CHECK(nec_table_a(10.0, LayingMethod::raceway, 90.0, pv) == 40.0);
    CHECK(nec_table_a(10.0, LayingMethod::free_air, 125.0, pv) == 55.0);
    CHECK(nec_table_a(12.0, LayingMethod::free_air, 60.0, AmpacityGroup::cord) == 25.0);
    CHECK(nec_table_a(12.0, LayingMethod::raceway, 90.0, AmpacityGroup::cord) == 0.0);
}

// Source: IEC 60364-5-52, B.52.2, B.52.3 and B.52.12, two loaded (iec-60364-5-52).
TEST_CASE("IEC has a current for each way of laying") {
    CHECK(iec_table_a(2.5, LayingMethod::raceway, 70.0) == 24.0);
    CHECK(iec_table_a(4.0, LayingMethod::raceway, 70.0) == 32.0);
    CHECK(iec_table_a(4.0, LayingMethod::raceway, 70.0, AmpacityGroup::cable) == 30.0);
    CHECK(iec_table_a(1.5, LayingMethod::thermal_insulation, 70.0) == 14.5);
    CHECK(iec_table_a(1.5, LayingMethod::thermal_insulation, 90.0, AmpacityGroup::cable) == 18.5);
    CHECK(iec_table_a(6.0, LayingMethod::bundle, 90.0) == 58.0);
    CHECK(iec_table_a(6.0, LayingMethod::free_air, 90.0) == 63.0);
    CHECK(iec_table_a(2.5, LayingMethod::earth, 70.0) == 29.0);
    CHECK(iec_table_a(2.5, LayingMethod::raceway, 60.0) == 0.0);
}

// Source: EN 50618, 60 °C air, as a maker's sheet prints it (en-50618).
TEST_CASE("PV cable has the currents of its standard, two that touch fewer") {
    const auto cable = AmpacityGroup::pv_cable;
    CHECK(iec_table_a(4.0, LayingMethod::free_air, 90.0, cable) == 55.0);
    CHECK(iec_table_a(4.0, LayingMethod::bundle, 90.0, cable) == 44.0);
    CHECK(iec_table_a(6.0, LayingMethod::bundle, 90.0, cable) == 57.0);
    CHECK(iec_table_a(4.0, LayingMethod::raceway, 90.0, cable) == 42.0);
}

TEST_CASE("a size between two of the table counts as the smaller, one below the table has none") {
    CHECK(nec_table_a(11.0, LayingMethod::raceway, 90.0) == 30.0);
    CHECK(iec_table_a(2.08, LayingMethod::raceway, 90.0) == 23.0);
    CHECK(iec_table_a(5.26, LayingMethod::raceway, 90.0) == 42.0);
    CHECK(iec_table_a(1.0, LayingMethod::raceway, 90.0) == 0.0);
    CHECK(nec_table_a(20.0, LayingMethod::free_air, 90.0) == 0.0);
}

TEST_CASE("currents grow with size and conductor temperature, and have a source") {
    for (const AmpacityColumn& column : heatmatch::ampacity_columns()) {
        const std::string source(column.source);
        CAPTURE(source);
        REQUIRE(column.sizes.size() == column.currents_a.size());
        CHECK(std::is_sorted(column.currents_a.begin(), column.currents_a.end()));
        const std::string opening = '"' + source + "\":";
        CHECK(heatmatch::sources_json().find(opening) != std::string_view::npos);
    }
    for (double awg = 14.0; awg >= -3.0; awg -= 1.0) {
        double before = 0.0;
        for (double rating_c : {60.0, 75.0, 90.0, 150.0, 200.0, 250.0}) {
            CHECK(nec_table_a(awg, LayingMethod::raceway, rating_c) >= before);
            before = nec_table_a(awg, LayingMethod::raceway, rating_c);
            CHECK(nec_table_a(awg, LayingMethod::free_air, rating_c) > before);
        }
    }
}
