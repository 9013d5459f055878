#include "reference_csv.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/solar/datasheet_fit.hpp"

using heatmatch::DatasheetFit;
using heatmatch::DiodeCurve;
using heatmatch::fit_label;
using heatmatch::FitMode;
using heatmatch::FitRefusal;
using heatmatch::LabelValues;

namespace {

LabelValues label_of(const ReferenceRow& row) {
    const double i_sc = number(row, "isc_A");
    const double v_oc = number(row, "voc_V");
    return {.v_oc = v_oc,
            .i_sc = i_sc,
            .v_mp = number(row, "vmp_V"),
            .i_mp = number(row, "imp_A"),
            .alpha_per_k = number(row, "alpha_sc_A_per_K") / i_sc,
            .beta_per_k = number(row, "beta_voc_V_per_K") / v_oc,
            .gamma_per_k = number(row, "gamma_pmp_per_K"),
            .band_gap_ev = number(row, "EgRef_eV")};
}

const LabelValues ordinary_label{.v_oc = 37.5,
                                 .i_sc = 8.66,
                                 .v_mp = 30.1,
                                 .i_mp = 8.14,
                                 .alpha_per_k = 0.00068,
                                 .beta_per_k = -0.00347,
                                 .gamma_per_k = -0.00461};

double relative_change(const DatasheetFit& fit, double (*of)(const DiodeCurve&)) {
    constexpr double h = 0.01;
    const double up = of(fit.at(1000.0, 25.0 + h));
    const double down = of(fit.at(1000.0, 25.0 - h));
    return (up - down) / (2.0 * h) / of(fit.at(1000.0, 25.0));
}

double open_voltage(const DiodeCurve& curve) {
    return curve.open_circuit_voltage_v();
}

double best_power(const DiodeCurve& curve) {
    return curve.maximum_power().power_w;
}

}  // namespace

// Source: pvlib, tests/reference/pv_open.csv. Its fit takes beta from a step of +2 K, which moves
// the ideality by 2e-4 and power by 1e-4: relative 3e-4.
TEST_CASE("pure De Soto fits agree with pvlib from the label values") {
    for (const ReferenceRow& row : read_reference("pv_open.csv")) {
        CAPTURE(row.at("case"));
        const auto result = fit_label(label_of(row), false);
        REQUIRE(std::holds_alternative<DatasheetFit>(result));
        const auto& fit = std::get<DatasheetFit>(result);
        CHECK(fit.fit_mode == FitMode::exact);
        CHECK(fit.modified_ideality_v == doctest::Approx(number(row, "a_ref_V")).epsilon(3e-4));
        const double share = number(row, "P") / number(row, "S");
        const auto point = fit.at(number(row, "G_W_m2"), number(row, "Tcell_C"))
                               .into_resistance(number(row, "R_load_ohm") * share);
        CHECK(point.voltage_v * number(row, "S") ==
              doctest::Approx(number(row, "V_V")).epsilon(3e-4));
        CHECK(point.current_a * number(row, "P") ==
              doctest::Approx(number(row, "I_A")).epsilon(3e-4));
        CHECK(point.power_w * number(row, "S") * number(row, "P") ==
              doctest::Approx(number(row, "P_W")).epsilon(3e-4));
    }
}

TEST_CASE("an exact fit meets the label") {
    const auto fit = std::get<DatasheetFit>(fit_label(ordinary_label));
    CHECK(fit.fit_mode == FitMode::exact);
    const DiodeCurve stc = fit.at(1000.0, 25.0);
    CHECK(stc.short_circuit_current_a() == doctest::Approx(8.66).epsilon(1e-9));
    CHECK(stc.open_circuit_voltage_v() == doctest::Approx(37.5).epsilon(1e-9));
    CHECK(stc.maximum_power().voltage_v == doctest::Approx(30.1).epsilon(1e-6));
    CHECK(stc.maximum_power().current_a == doctest::Approx(8.14).epsilon(1e-6));
    CHECK(relative_change(fit, open_voltage) == doctest::Approx(-0.00347).epsilon(1e-6));
    CHECK(relative_change(fit, best_power) == doctest::Approx(-0.00461).epsilon(1e-5));
    CHECK(fit.gamma_error_per_k == doctest::Approx(0.0).scale(1e-3));
    CHECK(fit.warnings.empty());
}

TEST_CASE("a label no diode can meet is split, and the shift is reported") {
    LabelValues label = ordinary_label;
    label.v_mp = 29.0;
    label.i_mp = 8.52;
    const auto fit = std::get<DatasheetFit>(fit_label(label));
    CHECK(fit.fit_mode == FitMode::split);
    CHECK(fit.shunt_conductance_s == 0.0);
    CHECK(fit.vmp_shift != 0.0);
    const DiodeCurve stc = fit.at(1000.0, 25.0);
    CHECK(stc.short_circuit_current_a() == doctest::Approx(8.66).epsilon(1e-9));
    CHECK(stc.open_circuit_voltage_v() == doctest::Approx(37.5).epsilon(1e-9));
    CHECK(stc.maximum_power().power_w == doctest::Approx(29.0 * 8.52).epsilon(1e-9));
    CHECK(stc.maximum_power().voltage_v ==
          doctest::Approx(29.0 * (1.0 + fit.vmp_shift)).epsilon(1e-7));
    CHECK(relative_change(fit, open_voltage) == doctest::Approx(-0.00347).epsilon(1e-6));
    CHECK(relative_change(fit, best_power) == doctest::Approx(-0.00461).epsilon(1e-5));
}

TEST_CASE("where even no series resistance is too much, the band gap is freed") {
    LabelValues label = ordinary_label;
    label.v_mp = 33.2;
    label.i_mp = 8.50;
    label.beta_per_k = -0.0050;
    const auto fit = std::get<DatasheetFit>(fit_label(label));
    CHECK(fit.fit_mode == FitMode::gap);
    CHECK(fit.series_resistance_ohm == 0.0);
    CHECK(fit.band_gap_ev != doctest::Approx(1.121).epsilon(1e-3));
    const DiodeCurve stc = fit.at(1000.0, 25.0);
    CHECK(stc.maximum_power().power_w == doctest::Approx(33.2 * 8.50).epsilon(1e-9));
    CHECK(relative_change(fit, open_voltage) == doctest::Approx(-0.0050).epsilon(1e-5));
}

TEST_CASE("gamma is met by the series resistance within its clamp") {
    LabelValues label = ordinary_label;
    label.gamma_per_k = -0.0070;
    const auto fit = std::get<DatasheetFit>(fit_label(label));
    CHECK(fit.series_resistance_clamped);
    CHECK(fit.series_resistance_per_k == doctest::Approx(0.012));
    CHECK(fit.gamma_error_per_k ==
          doctest::Approx(relative_change(fit, best_power) + 0.0070).epsilon(1e-3));
    const auto pure = std::get<DatasheetFit>(fit_label(label, false));
    CHECK(pure.series_resistance_per_k == 0.0);
    // At the clamp Rs would turn negative below -58 °C and vanish: it keeps a tenth.
    CHECK(fit.at(1000.0, -70.0).series_resistance_ohm ==
          doctest::Approx(0.1 * fit.series_resistance_ohm));
}

TEST_CASE("labels that no diode can have are refused by field") {
    const auto field_of = [](LabelValues label) {
        const auto result = fit_label(label);
        REQUIRE(std::holds_alternative<FitRefusal>(result));
        return std::get<FitRefusal>(result).field;
    };
    const auto with = [](auto change) {
        LabelValues label = ordinary_label;
        change(label);
        return label;
    };
    CHECK(field_of(with([](LabelValues& l) { l.i_mp = 8.7; })) == "i_mp");
    CHECK(field_of(with([](LabelValues& l) { l.v_mp = 38.0; })) == "v_mp");
    CHECK(field_of(with([](LabelValues& l) { l.v_mp = 18.0; })) == "v_mp");
    CHECK(field_of(with([](LabelValues& l) { l.i_mp = 1.5; })) == "v_mp");
    CHECK(field_of(with([](LabelValues& l) { l.v_oc = -1.0; })) == "v_oc");
    CHECK(field_of(with([](LabelValues& l) { l.i_sc = std::nan(""); })) == "i_sc");
    CHECK(field_of(with([](LabelValues& l) { l.beta_per_k = 0.003; })) == "beta_voc_pct_per_k");
}

TEST_CASE("an incomplete label is completed from the class, and that is listed") {
    const heatmatch::Panel panel{.id = "torn",
                                 .label = "torn",
                                 .technology = heatmatch::Technology::multi_si,
                                 .v_oc = 37.5,
                                 .i_sc = 8.66};
    const DatasheetFit fit = heatmatch::fit_single_diode(panel);
    CHECK(fit.assumed.size() == 5);
    CHECK(fit.assumed.front().field == "v_mp");
    CHECK(fit.at(1000.0, 25.0).maximum_power().power_w ==
          doctest::Approx(0.808 * 37.5 * 0.938 * 8.66).epsilon(1e-3));
}

TEST_CASE("unusual values are named") {
    LabelValues label = ordinary_label;
    label.alpha_per_k = 0.003;
    const auto fit = std::get<DatasheetFit>(fit_label(label));
    REQUIRE(fit.warnings.size() == 1);
    CHECK(fit.warnings.front().text().find("alpha_isc_pct_per_k = 0.3") != std::string::npos);
}

// Source: pvlib, calcparams_cec: the listed coefficient of the current is that of the label less
// `Adjust` per cent of it: 0.05 %/K of 8.5 A is 4.25 mA/K, less 8 % 3.91 mA/K, which is 156.4 mA
// over 40 K.
TEST_CASE("a listed fit has its current coefficient from the label, adjusted") {
    heatmatch::Panel panel{.id = "listed",
                           .label = "listed",
                           .technology = heatmatch::Technology::multi_si,
                           .v_oc = 37.5,
                           .i_sc = 8.5,
                           .alpha_isc_pct_per_k = 0.05};
    panel.listed_fit = heatmatch::ListedFit{.light_current_a = 8.53,
                                            .saturation_current_a = 1e-9,
                                            .series_resistance_ohm = 0.3,
                                            .shunt_resistance_ohm = 250.0,
                                            .modified_ideality_v = 1.6,
                                            .adjust_pct = 8.0};
    const auto at = [&panel](double cell_c) {
        return heatmatch::listed_single_diode(panel).at(1000.0, cell_c).light_current_a;
    };
    CHECK(at(25.0) == doctest::Approx(8.53).epsilon(1e-12));
    CHECK(at(65.0) - at(25.0) == doctest::Approx(0.1564).epsilon(1e-9));
    panel.listed_fit->adjust_pct = -8.0;
    CHECK(at(65.0) - at(25.0) == doctest::Approx(0.1836).epsilon(1e-9));
    const heatmatch::SingleDiode listed = heatmatch::listed_single_diode(panel);
    CHECK(listed.ln_saturation_current == doctest::Approx(std::log(1e-9)));
    CHECK(listed.series_resistance_ohm == 0.3);
    CHECK(listed.shunt_conductance_s == doctest::Approx(0.004));
    CHECK(listed.modified_ideality_v == 1.6);
}
