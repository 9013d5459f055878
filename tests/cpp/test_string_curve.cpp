#include "within.hpp"

#include <cmath>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/solar/string_curve.hpp"

using heatmatch::DiodeCurve;
using heatmatch::SingleDiode;
using heatmatch::StringCurve;

namespace {

DiodeCurve substring_of(double irradiance_w_m2) {
    const SingleDiode panel{.light_current_a = 8.6,
                            .ln_saturation_current = std::log(3e-10),
                            .series_resistance_ohm = 0.33,
                            .shunt_conductance_s = 1.0 / 380.0,
                            .modified_ideality_v = 1.55};
    return panel.scaled(1.0, 1.0 / 3.0).at(irradiance_w_m2, 30.0);
}

}  // namespace

// Source: arithmetic: the curve of equal substrings is that of one, its voltage times their number.
TEST_CASE("equal substrings are counted once, and a string's current is found at its voltage") {
    StringCurve string;
    for (int i = 0; i < 6; ++i) string.add(substring_of(700.0), 0.5);
    REQUIRE(string.substrings.size() == 1);
    CHECK(string.substrings.front().count == 6.0);
    const DiodeCurve one = substring_of(700.0);
    CHECK(within(string.open_circuit_voltage_v(), 6.0 * one.open_circuit_voltage_v(), 1e-12));
    for (const double volts : {0.0, 12.0, 40.0, 60.0, 80.0, 95.0}) {
        CAPTURE(volts);
        const double amperes = string.current_a(volts);
        CHECK(within(amperes, one.current_a(volts / 6.0), 1e-11));
        CHECK(std::fabs(string.at_current(amperes).voltage_v - volts) < 1e-10);
    }
}

TEST_CASE(
    "the kinks of a string are where a bypass diode or the blocking diode begins to conduct") {
    StringCurve string{.blocking_v = 0.5};
    string.add(substring_of(900.0), 0.5);
    string.add(substring_of(400.0), 0.5);
    const std::vector<double> kinks = string.kinks_v();
    REQUIRE(kinks.size() == 2);
    const double shaded_a = string.substrings[1].current_a(-0.5);
    CHECK(within(kinks[0], string.at_current(shaded_a).voltage_v - 0.5, 1e-12));
    CHECK(within(kinks[1], string.open_circuit_voltage_v(), 1e-12));
    // Below the first kink the shaded substring is bypassed: more current than it can carry.
    CHECK(string.current_a(0.9 * kinks[0]) > shaded_a);
    CHECK(string.current_a(1.1 * kinks[0]) < shaded_a);
    CHECK(string.current_a(kinks[1] + 1.0) == 0.0);
}
