#include <cmath>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/solar/array.hpp"
#include "heatmatch/solar/datasheet_fit.hpp"
#include "heatmatch/solar/mixed_array.hpp"
#include "heatmatch/solar/mixed_array_curve.hpp"

using heatmatch::Array;
using heatmatch::ArrayCurve;
using heatmatch::DatasheetFit;
using heatmatch::OperatingPoint;

namespace {

/// A generic 72-cell panel of 340 W.
DatasheetFit generic(bool use_gamma = true) {
    return std::get<DatasheetFit>(heatmatch::fit_label({.v_oc = 46.5,
                                                        .i_sc = 9.45,
                                                        .v_mp = 38.2,
                                                        .i_mp = 8.90,
                                                        .alpha_per_k = 0.0005,
                                                        .beta_per_k = -0.0031,
                                                        .gamma_per_k = -0.0040},
                                                       use_gamma));
}

}  // namespace

// Source: pvlib, fit_desoto of the same label and i_from_v into R + Rs; printed to 1 W and 0.1 V.
TEST_CASE("two generic panels in series into a 120 V 1000 W element agree with pvlib") {
    const Array array = Array::uniform(generic(), 2, 1);
    struct Case {
        double sun;
        double power;
        double volts;
    };
    for (const auto& [sun, power, volts] :
         {Case{1000, 508.4, 85.57}, Case{800, 480.5, 83.18}, Case{500, 313.4, 67.18},
          Case{200, 51.11, 27.13}, Case{100, 12.83, 13.59}}) {
        const auto shown_sun = sun;  // clang 14 captures no structured binding
        CAPTURE(shown_sun);
        const OperatingPoint point = array.at(sun, 25.0).into_resistance(14.4);
        CHECK(point.power_w == doctest::Approx(power).epsilon(1e-3));
        CHECK(point.voltage_v == doctest::Approx(volts).epsilon(1e-3));
    }
}

// Source: pvlib as above, cells at 20 °C air + 25 K x sun / 800 W/m2. De Soto alone: with the
// series resistance following the temperature power moves by up to 1.4 %.
TEST_CASE("the same on warm cells agrees with pvlib") {
    struct Case {
        double sun;
        double cell_c;
        double power;
        double mpp;
    };
    for (const auto& [sun, cell_c, power, mpp] :
         {Case{1000, 51.25, 428.56, 612.48}, Case{800, 45.0, 423.09, 505.09},
          Case{500, 35.625, 312.90, 327.83}, Case{200, 26.25, 51.171, 133.30},
          Case{100, 23.125, 12.805, 65.833}}) {
        const auto shown_sun = sun;  // clang 14 captures no structured binding
        CAPTURE(shown_sun);
        const ArrayCurve pure = Array::uniform(generic(false), 2, 1).at(sun, cell_c);
        CHECK(pure.into_resistance(14.4).power_w == doctest::Approx(power).epsilon(1e-3));
        CHECK(pure.maximum_power().power_w == doctest::Approx(mpp).epsilon(1e-3));
        const ArrayCurve full = Array::uniform(generic(), 2, 1).at(sun, cell_c);
        CHECK(full.into_resistance(14.4).power_w == doctest::Approx(power).epsilon(0.014));
    }
}

// Source: pvlib as above; share of the rated power over R / (Vmp/Imp) at 1000 W/m2, 25 °C.
TEST_CASE("a resistance too low costs more than one too high, by the shares of pvlib") {
    const heatmatch::DiodeCurve stc = generic().at(1000.0, 25.0);
    struct Case {
        double ratio;
        double share;
    };
    for (const auto& [ratio, share] :
         {Case{0.5, 0.5572}, Case{0.8, 0.8823}, Case{1.0, 1.0}, Case{1.2, 0.9430},
          Case{1.4, 0.8561}, Case{1.6, 0.7759}, Case{2.0, 0.6476}, Case{3.0, 0.4536},
          Case{4.0, 0.3480}, Case{6.0, 0.2370}, Case{10.0, 0.1446}}) {
        const auto shown_ratio = ratio;  // clang 14 captures no structured binding
        CAPTURE(shown_ratio);
        CHECK(stc.into_resistance(ratio * 38.2 / 8.90).power_w / (38.2 * 8.90) ==
              doctest::Approx(share).epsilon(1e-3));
    }
}

// Source: Ohm's and Kirchhoff's laws.
TEST_CASE("an array's operating point lies on its own curve and on the load line") {
    const DatasheetFit panel = generic();
    for (const int series : {1, 2, 5}) {
        for (const int parallel : {1, 2, 3}) {
            const ArrayCurve curve = Array::uniform(panel, series, parallel).at(740.0, 33.0);
            for (const double ohm : {0.5, 4.0, 14.4, 60.0}) {
                const OperatingPoint point = curve.into_resistance(ohm);
                CHECK(point.voltage_v == doctest::Approx(point.current_a * ohm).epsilon(1e-12));
                CHECK(point.power_w ==
                      doctest::Approx(point.current_a * point.voltage_v).epsilon(1e-12));
                CHECK(curve.current_a(point.voltage_v) ==
                      doctest::Approx(point.current_a).epsilon(1e-9));
                CHECK(curve.voltage_v(point.current_a) ==
                      doctest::Approx(point.voltage_v).epsilon(1e-9));
                CHECK(point.power_w <= curve.maximum_power().power_w * (1.0 + 1e-12));
            }
        }
    }
}

TEST_CASE("series multiplies voltage, parallel multiplies current") {
    const DatasheetFit panel = generic();
    const heatmatch::DiodeCurve one = panel.at(900.0, 40.0);
    const ArrayCurve array = Array::uniform(panel, 3, 2).at(900.0, 40.0);
    CHECK(array.open_circuit_voltage_v() == doctest::Approx(3.0 * one.open_circuit_voltage_v()));
    CHECK(array.short_circuit_current_a() == doctest::Approx(2.0 * one.short_circuit_current_a()));
    CHECK(array.maximum_power().power_w == doctest::Approx(6.0 * one.maximum_power().power_w));
    CHECK(array.maximum_power().voltage_v == doctest::Approx(3.0 * one.maximum_power().voltage_v));
    CHECK(array.maximum_power().current_a == doctest::Approx(2.0 * one.maximum_power().current_a));
    // 12 ohm on three in series, two strings: each panel sees 12 x 2 / 3 = 8 ohm.
    CHECK(array.per_panel_ohm(12.0) == doctest::Approx(8.0));
    CHECK(array.into_resistance(12.0).power_w ==
          doctest::Approx(6.0 * one.into_resistance(8.0).power_w).epsilon(1e-12));
}

TEST_CASE("hook-ups of one ratio of strings to panels load each panel alike") {
    const DatasheetFit panel = generic();
    const double one = Array::uniform(panel, 1, 1).at(600.0, 35.0).into_resistance(5.0).power_w;
    const double four = Array::uniform(panel, 2, 2).at(600.0, 35.0).into_resistance(5.0).power_w;
    CHECK(four == doctest::Approx(4.0 * one).epsilon(1e-12));
}

TEST_CASE("an array without light gives nothing") {
    const ArrayCurve dark = Array::uniform(generic(), 2, 1).at(0.0, 5.0);
    CHECK(dark.into_resistance(14.4).power_w == 0.0);
    CHECK(dark.maximum_power().power_w == 0.0);
    CHECK(dark.open_circuit_voltage_v() == 0.0);
}

TEST_CASE("an array of no panels is refused, naming the count") {
    const DatasheetFit panel = generic();
    const auto field_of = [&](int series, int parallel) {
        try {
            static_cast<void>(Array::uniform(panel, series, parallel));
        } catch (const heatmatch::InvalidInput& error) {
            return error.detail().field;
        }
        return std::string("nothing");
    };
    CHECK(field_of(0, 1) == "series");
    CHECK(field_of(2, 0) == "parallel");
    CHECK(field_of(2, -1) == "parallel");
    CHECK(field_of(1, 1) == "nothing");
}

// Source: the same strings with their diodes, solved as an array of unlike panels.
TEST_CASE("a blocking diode in each string costs its drop, and lets nothing flow backwards") {
    const Array array{.panel = generic(), .series = 2, .parallel = 3, .drop_v = 0.5};
    const heatmatch::StringPanel panel{.diode = generic()};
    const heatmatch::PanelString string{.panels = {panel, panel}, .blocking_v = 0.5};
    const heatmatch::MixedArray mixed{.strings = {string, string, string}};
    for (const double sun : {1000.0, 300.0, 60.0}) {
        CAPTURE(sun);
        const ArrayCurve curve = array.at(sun, 25.0);
        const std::vector<heatmatch::PanelConditions> all(
            6, {.irradiance_w_m2 = sun, .cell_temperature_c = 25.0});
        const heatmatch::MixedArrayCurve same = mixed.at(all);
        for (const double ohm : {0.5, 2.0, 6.0, 20.0, 200.0}) {
            CAPTURE(ohm);
            const OperatingPoint point = curve.into_resistance(ohm);
            const OperatingPoint other = same.into_resistance(ohm);
            CHECK(point.current_a == doctest::Approx(other.current_a).epsilon(1e-9));
            CHECK(point.voltage_v == doctest::Approx(point.current_a * ohm).epsilon(1e-9));
            CHECK(point.power_w == doctest::Approx(other.power_w).epsilon(1e-9));
        }
        CHECK(curve.maximum_power().power_w ==
              doctest::Approx(same.maximum_power().power_w).epsilon(1e-9));
        CHECK(curve.open_circuit_voltage_v() ==
              doctest::Approx(same.open_circuit_voltage_v()).epsilon(1e-9));
        CHECK(curve.current_a(curve.open_circuit_voltage_v() + 5.0) == 0.0);
    }
    // So little light that the diode does not conduct.
    const ArrayCurve dim = array.at(1e-12, 25.0);
    CHECK(dim.into_resistance(5.0).power_w == doctest::Approx(0.0).epsilon(1e-9));
    CHECK(dim.maximum_power().power_w == doctest::Approx(0.0).epsilon(1e-9));
}
