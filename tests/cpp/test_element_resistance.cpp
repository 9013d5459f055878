#include "demo.hpp"
#include "reference_csv.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "heatmatch/heat/element_resistance.hpp"

using heatmatch::Alloy;
using heatmatch::Element;
using heatmatch::element_resistance;
using heatmatch::ElementResistance;
using heatmatch::resistance_factor;

namespace {

/// An alloy whose ohms do not move.
const Alloy constant{.id = "constant", .resistance_factor = {{20.0, 1.0}, {1000.0, 1.0}}};

const Element rated_element{
    .id = "rated", .family = "tubular", .rated_v = 120.0, .rated_w = 1000.0};

bool assumes_about(const ElementResistance& ohms, const std::string& field) {
    return std::any_of(ohms.assumed.begin(), ohms.assumed.end(),
                       [&](const auto& each) { return contains(each.field, field); });
}

}  // namespace

// Source: element catalogues, rated power +5/-10 %; 1/1.05 and 1/0.90 of the ohms.
TEST_CASE("the usual power tolerance is -4.8 and +11.1 % of resistance") {
    const ElementResistance ohms = element_resistance(rated_element, &constant, 300.0);
    CHECK(ohms.basis == heatmatch::ResistanceBasis::volts_and_watts);
    CHECK(ohms.typical_ohm == doctest::Approx(14.4).epsilon(1e-12));
    CHECK(ohms.low_ohm / ohms.typical_ohm == doctest::Approx(1.0 - 0.0476).epsilon(1e-4));
    CHECK(ohms.high_ohm / ohms.typical_ohm == doctest::Approx(1.1111).epsilon(1e-4));
    CHECK(assumes_about(ohms, "power tolerance"));
    CHECK(ohms.fixed);
}

// Source: 700 °C are 1292 °F, 300 °C 572 °F and 600 °C 1112 °F.
TEST_CASE("assumptions about resistance are listed in either unit set") {
    const ElementResistance ohms = element_resistance(rated_element, nullptr, 300.0);
    const auto said = [&](heatmatch::UnitSystem system) {
        std::string text;
        for (const auto& each : ohms.assumed) text += each.said().text(system) + '\n';
        return text;
    };
    CHECK(said(heatmatch::UnitSystem::si) ==
          "element \"rated\": alloy = unknown: 0.97 to 1.17 at 700 °C (gb-t-1234)\n"
          "element \"rated\": coil temperature in use = 300 °C (from memory)\n"
          "element \"rated\": power tolerance = +5/-10% (tubular-catalogue-tolerance)\n"
          "element \"rated\": coil temperature at rated watts = 600 °C (from memory)\n");
    const std::string us = said(heatmatch::UnitSystem::us);
    CHECK(contains(us, "0.97 to 1.17 at 1292 °F"));
    CHECK(contains(us, "in use = 572 °F"));
    CHECK(contains(us, "+5/-10%"));
}

// Source: the same; 120 V, 1000 W is 13.7 to 16.0 ohm.
TEST_CASE("a 1000 W element for 120 V has 13.7 to 16.0 ohm when new") {
    const ElementResistance ohms = element_resistance(rated_element, &constant, 300.0);
    CHECK(std::fabs(ohms.low_ohm - 13.7) < 0.05);
    CHECK(std::fabs(ohms.high_ohm - 16.0) < 0.05);
}

TEST_CASE("an element's own tolerance is used and not assumed") {
    Element element = rated_element;
    element.power_tolerance_plus_pct = 11.0;
    element.power_tolerance_minus_pct = 9.0;
    const ElementResistance ohms = element_resistance(element, &constant, 300.0);
    // Arithmetic: 14.4/1.11 and 14.4/0.91.
    CHECK(ohms.low_ohm == doctest::Approx(14.4 / 1.11).epsilon(1e-12));
    CHECK(ohms.high_ohm == doctest::Approx(14.4 / 0.91).epsilon(1e-12));
    CHECK_FALSE(assumes_about(ohms, "power tolerance"));
}

TEST_CASE("measured resistance takes precedence over printed, printed over volts and watts") {
    Element element = rated_element;
    element.resistance_ohm = 15.0;
    const ElementResistance printed = element_resistance(element, &constant, 300.0);
    CHECK(printed.basis == heatmatch::ResistanceBasis::printed);
    CHECK(printed.typical_ohm == doctest::Approx(15.0).epsilon(1e-12));
    CHECK(printed.high_ohm == doctest::Approx(15.0 / 0.9).epsilon(1e-12));
    element.measured_resistance_ohm = 14.1;
    const ElementResistance measured = element_resistance(element, &constant, 300.0);
    CHECK(measured.basis == heatmatch::ResistanceBasis::measured);
    CHECK(measured.typical_ohm == doctest::Approx(14.1).epsilon(1e-12));
    CHECK(measured.low_ohm == doctest::Approx(14.1 * 0.99).epsilon(1e-12));
    CHECK(measured.high_ohm == doctest::Approx(14.1 * 1.01).epsilon(1e-12));
    CHECK_FALSE(assumes_about(measured, "power tolerance"));
}

// Source: GB/T 1234, see tests/reference/alloy_open.csv.
TEST_CASE("the starter's alloys follow the published factors") {
    for (const ReferenceRow& row : read_reference("alloy_open.csv")) {
        CAPTURE(row.at("alloy"));
        CAPTURE(row.at("t_c"));
        const Alloy& alloy = heatmatch::find_alloy(starter(), row.at("alloy"));
        const auto factor = resistance_factor(&alloy, number(row, "t_c"));
        CHECK(std::fabs(factor.typical - number(row, "factor")) <= 0.0005);
        CHECK(factor.low == factor.typical);
        CHECK(factor.high == factor.typical);
    }
}

// Source: arithmetic on the factors of GB/T 1234: 1.018 at 300 °C, 1.018 at 600 °C for 80/20.
TEST_CASE(
    "measured cold resistance rises with the coil temperature, rated values are hot "
    "already") {
    const Alloy& nicr = heatmatch::find_alloy(starter(), "nicr-80-20");
    Element element = rated_element;
    CHECK(element_resistance(element, &nicr, 300.0).typical_ohm ==
          doctest::Approx(14.4 * 1.018 / 1.018).epsilon(1e-12));
    CHECK(element_resistance(element, &nicr, 500.0).typical_ohm ==
          doctest::Approx(14.4 * 1.026 / 1.018).epsilon(1e-12));
    element.measured_resistance_ohm = 14.0;
    CHECK(element_resistance(element, &nicr, 500.0).typical_ohm ==
          doctest::Approx(14.0 * 1.026).epsilon(1e-12));
    CHECK(element_resistance(element, &nicr, 20.0).typical_ohm == doctest::Approx(14.0));
}

// Source: the largest and smallest factors at 700 °C of the alloys GB/T 1234 lists that are used in
// heaters: 0.972 (27-7) to 1.173 (35-20). Below, the tables bend away from a straight line by up to
// 0.02.
TEST_CASE("an unknown alloy gets a band that holds all usual ones") {
    const auto unknown = resistance_factor(nullptr, 700.0);
    CHECK(unknown.low == doctest::Approx(0.97).epsilon(1e-12));
    CHECK(unknown.typical == doctest::Approx(1.02).epsilon(1e-12));
    CHECK(unknown.high == doctest::Approx(1.17).epsilon(1e-12));
    CHECK(resistance_factor(nullptr, 20.0).low == 1.0);
    CHECK(resistance_factor(nullptr, 20.0).high == 1.0);
    for (const Alloy& alloy : starter().alloys) {
        if (!alloy.fixed_resistance.value_or(true)) continue;
        for (const double t_c : {20.0, 200.0, 400.0, 600.0}) {
            CAPTURE(alloy.id);
            CAPTURE(t_c);
            const double factor = resistance_factor(&alloy, t_c).typical;
            const auto band = resistance_factor(nullptr, t_c);
            CHECK(factor >= band.low - 0.02);
            CHECK(factor <= band.high + 0.02);
        }
    }
    CHECK(assumes_about(element_resistance(rated_element, nullptr, 300.0), "alloy"));
}

TEST_CASE("the band of an unknown alloy holds its typical value at every temperature") {
    for (double t_c = 20.0; t_c <= 1200.0; t_c += 59.0) {
        CAPTURE(t_c);
        const ElementResistance ohms = element_resistance(rated_element, nullptr, t_c);
        CHECK(ohms.low_ohm < ohms.typical_ohm);
        CHECK(ohms.typical_ohm < ohms.high_ohm);
    }
}

TEST_CASE("lamps and self-regulating blocks are not fixed") {
    int seen = 0;
    for (const Element& element : starter().elements) {
        if (element.family != "lamp" && element.family != "ptc air" &&
            element.family != "heat trace") {
            continue;
        }
        CAPTURE(element.id);
        const Alloy& alloy = heatmatch::find_alloy(starter(), element.alloy);
        CHECK_FALSE(element_resistance(element, &alloy, 300.0).fixed);
        ++seen;
    }
    CHECK(seen >= 3);
    CHECK(element_resistance(rated_element, nullptr, 300.0).fixed);
}
