#include "reference_diode.hpp"

#include <cmath>
#include <limits>
#include <random>

#include <doctest/doctest.h>

#include "heatmatch/solar/single_diode.hpp"

using heatmatch::DiodeCurve;
using heatmatch::OperatingPoint;
using heatmatch::SingleDiode;

namespace {

/// A panel near the middle of those in use.
const SingleDiode typical{.light_current_a = 8.7,
                          .ln_saturation_current = std::log(3e-10),
                          .series_resistance_ohm = 0.3,
                          .shunt_conductance_s = 1.0 / 250.0,
                          .modified_ideality_v = 1.58,
                          .alpha_isc_a_per_k = 0.005};

}  // namespace

// Source: pvlib; tests/reference/pv_open.csv tells how the rows were made. Relative 1e-10.
TEST_CASE("operating points agree with pvlib") {
    for (const ReferenceRow& row : read_reference("pv_open.csv")) {
        CAPTURE(row.at("case"));
        const double series = number(row, "S");
        const double parallel = number(row, "P");
        const DiodeCurve curve = diode_of(row).at(number(row, "G_W_m2"), number(row, "Tcell_C"));
        const OperatingPoint point =
            curve.into_resistance(number(row, "R_load_ohm") * parallel / series);
        CHECK(point.voltage_v * series == doctest::Approx(number(row, "V_V")).epsilon(1e-10));
        CHECK(point.current_a * parallel == doctest::Approx(number(row, "I_A")).epsilon(1e-10));
        CHECK(point.power_w * series * parallel ==
              doctest::Approx(number(row, "P_W")).epsilon(1e-10));
        CHECK(curve.maximum_power().power_w * series * parallel ==
              doctest::Approx(number(row, "P_mpp_W")).epsilon(1e-9));
    }
}

TEST_CASE("the operating point lies on the curve and on the load line") {
    std::mt19937_64 random(7);
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    for (int n = 0; n < 2000; ++n) {
        SingleDiode diode = typical;
        diode.series_resistance_ohm = n % 5 == 0 ? 0.0 : unit(random);
        diode.shunt_conductance_s = n % 7 == 0 ? 0.0 : 0.02 * unit(random);
        const DiodeCurve curve =
            diode.at(1.0 + 1299.0 * unit(random), -40.0 + 120.0 * unit(random));
        const double ohms = std::pow(10.0, -3.0 + 8.0 * unit(random));
        const OperatingPoint point = curve.into_resistance(ohms);
        CAPTURE(ohms);
        CHECK(point.voltage_v == doctest::Approx(point.current_a * ohms).epsilon(1e-12));
        CHECK(curve.current_a(point.voltage_v) ==
              doctest::Approx(point.current_a).epsilon(1e-9).scale(curve.light_current_a));
        // Near short circuit the voltage hardly shows in the current.
        if (point.current_a > 0.95 * curve.short_circuit_current_a()) continue;
        CHECK(curve.voltage_v(point.current_a) ==
              doctest::Approx(point.voltage_v).epsilon(1e-9).scale(1.0));
    }
}

TEST_CASE("voltage rises and current falls with the resistance") {
    const DiodeCurve curve = typical.at(800.0, 40.0);
    OperatingPoint before = curve.into_resistance(0.0);
    CHECK(before.voltage_v == 0.0);
    CHECK(before.current_a == doctest::Approx(curve.short_circuit_current_a()));
    for (double ohms = 1e-3; ohms < 1e7; ohms *= 1.3) {
        const OperatingPoint point = curve.into_resistance(ohms);
        CHECK(point.voltage_v > before.voltage_v);
        CHECK(point.current_a < before.current_a);
        CHECK(point.power_w <= curve.maximum_power().power_w * (1.0 + 1e-12));
        before = point;
    }
    const OperatingPoint open = curve.into_resistance(std::numeric_limits<double>::infinity());
    CHECK(open.voltage_v == doctest::Approx(curve.open_circuit_voltage_v()));
    CHECK(open.power_w == 0.0);
}

TEST_CASE("the slope of power over ln R is that of a difference") {
    const DiodeCurve curve = typical.at(650.0, 30.0);
    for (double ohms = 0.1; ohms < 1000.0; ohms *= 1.7) {
        constexpr double h = 1e-5;
        const double up = curve.into_resistance(ohms * std::exp(h)).power_w;
        const double down = curve.into_resistance(ohms * std::exp(-h)).power_w;
        CHECK(curve.power_slope_w(ohms) ==
              doctest::Approx((up - down) / (2.0 * h)).epsilon(1e-6).scale(1.0));
    }
}

TEST_CASE("without light there is neither current nor voltage") {
    for (double sun : {0.0, -5.0}) {
        const DiodeCurve dark = typical.at(sun, 10.0);
        CHECK(dark.into_resistance(5.0).power_w == 0.0);
        CHECK(dark.maximum_power().power_w == 0.0);
        CHECK(dark.current_a(12.0) == 0.0);
        CHECK(dark.open_circuit_voltage_v() == 0.0);
    }
}

TEST_CASE("a current that no voltage gives has no voltage") {
    SingleDiode diode = typical;
    diode.shunt_conductance_s = 0.0;
    const DiodeCurve curve = diode.at(1000.0, 25.0);
    CHECK(curve.voltage_v(9.5) == -std::numeric_limits<double>::infinity());
}

TEST_CASE("scaling a diode scales its curve") {
    const DiodeCurve whole = typical.at(700.0, 35.0);
    const DiodeCurve part = typical.scaled(0.9, 2.0 / 3.0).at(700.0, 35.0);
    for (double share : {0.0, 0.3, 0.8, 0.95}) {
        const double volts = share * whole.open_circuit_voltage_v();
        CHECK(part.current_a(volts * 2.0 / 3.0) ==
              doctest::Approx(0.9 * whole.current_a(volts)).epsilon(1e-12));
    }
}
