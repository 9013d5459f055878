#include "assumed.hpp"
#include "demo.hpp"

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/solar/panel_in_service.hpp"

using heatmatch::OwnedPanels;
using heatmatch::Panel;
using heatmatch::panel_in_service;
using heatmatch::PanelInService;
using heatmatch::PanelMeasurement;

namespace {

const Panel& usual_panel() {
    return heatmatch::find_panel(starter(), "silicon-60-cell-245");
}

PanelInService in_service(const OwnedPanels& owned, const Panel& panel = usual_panel()) {
    return panel_in_service(owned, panel, -20.0);
}

}  // namespace

// Source: a panel made of known factors; nothing but the model itself lies between.
TEST_CASE("measured voltage and current return the factors from which they were made") {
    const PanelInService fresh = in_service({.panel = usual_panel().id});
    struct Case {
        double current;
        double voltage;
    };
    for (const auto& [current, voltage] :
         {Case{0.93, 0.985}, Case{1.02, 1.01}, Case{0.6, 2.0 / 3.0}}) {
        const auto shown_current = current;  // clang 14 captures no structured binding
        CAPTURE(shown_current);
        const heatmatch::DiodeCurve curve = fresh.as_new.scaled(current, voltage).at(650.0, 40.0);
        const PanelMeasurement reading{.v_oc = curve.open_circuit_voltage_v(),
                                       .i_sc = curve.short_circuit_current_a(),
                                       .irradiance_w_m2 = 650.0,
                                       .cell_temperature_c = 40.0};
        const PanelInService service = in_service({.panel = usual_panel().id, .measured = reading});
        CHECK(service.measured);
        CHECK(service.current_factor == doctest::Approx(current).epsilon(1e-9));
        CHECK(service.voltage_factor == doctest::Approx(voltage).epsilon(1e-9));
        CHECK(service.current_factor_low < service.current_factor);
        CHECK(service.current_factor_high > service.current_factor);
        const heatmatch::DiodeCurve today = service.today.at(1000.0, 25.0);
        const heatmatch::DiodeCurve new_one = service.as_new.at(1000.0, 25.0);
        CHECK(today.short_circuit_current_a() ==
              doctest::Approx(current * new_one.short_circuit_current_a()).epsilon(1e-9));
        CHECK(today.open_circuit_voltage_v() ==
              doctest::Approx(voltage * new_one.open_circuit_voltage_v()).epsilon(1e-9));
    }
}

// Source: Jordan and Kurtz 2012, median loss 0.5 % a year; 0.1 and 0.9 % a year for the band.
// Power tolerance of 4 % multiplies the ends.
TEST_CASE("age reduces the current by half a percent a year") {
    Panel panel = usual_panel();
    panel.power_tolerance_pct = 4.0;
    const PanelInService service = in_service({.panel = panel.id, .age_years = 20.0}, panel);
    CHECK_FALSE(service.measured);
    CHECK(service.current_factor == doctest::Approx(0.90).epsilon(1e-12));
    CHECK(service.current_factor_low == doctest::Approx(0.82 * 0.96).epsilon(1e-12));
    CHECK(service.current_factor_high == doctest::Approx(0.98 * 1.04).epsilon(1e-12));
    CHECK(service.voltage_factor == 1.0);
    CHECK_FALSE(assumes(service, "power_tolerance_pct"));
    // Margins are judged with the panel as new.
    CHECK(service.i_sc_limit_a == panel.i_sc);
    CHECK(service.as_new.at(1000.0, 25.0).short_circuit_current_a() ==
          doctest::Approx(panel.i_sc).epsilon(1e-9));
}

TEST_CASE("without age and readings a panel counts as new, with an assumed tolerance") {
    Panel panel = usual_panel();
    panel.power_tolerance_pct.reset();
    const PanelInService service = in_service({.panel = panel.id}, panel);
    CHECK(service.current_factor == 1.0);
    // 3 % either way: common practice, no source.
    CHECK(service.current_factor_low == doctest::Approx(0.97).epsilon(1e-12));
    CHECK(service.current_factor_high == doctest::Approx(1.03).epsilon(1e-12));
    CHECK(assumes(service, "power_tolerance_pct"));
}

TEST_CASE("a measured current takes precedence over age, a measured voltage alone does not") {
    const PanelInService fresh = in_service({.panel = usual_panel().id});
    const heatmatch::DiodeCurve then = fresh.as_new.at(800.0, 50.0);
    PanelMeasurement reading{.i_sc = 0.95 * then.short_circuit_current_a(),
                             .irradiance_w_m2 = 800.0,
                             .cell_temperature_c = 50.0};
    const PanelInService by_clamp =
        in_service({.panel = usual_panel().id, .age_years = 30.0, .measured = reading});
    CHECK(by_clamp.current_factor == doctest::Approx(0.95).epsilon(1e-9));
    CHECK(by_clamp.voltage_factor == 1.0);
    // The larger of label and measured: less of today lowers no margin.
    CHECK(by_clamp.i_sc_limit_a == usual_panel().i_sc);
    reading = {.v_oc = 0.98 * then.open_circuit_voltage_v(),
               .irradiance_w_m2 = 800.0,
               .cell_temperature_c = 50.0};
    const PanelInService by_volts =
        in_service({.panel = usual_panel().id, .age_years = 30.0, .measured = reading});
    CHECK(by_volts.current_factor == doctest::Approx(0.85).epsilon(1e-12));
    CHECK(by_volts.voltage_factor == doctest::Approx(0.98).epsilon(1e-9));
}

// Source: with three bypass diodes one section gone leaves two thirds of the volts; common
// practice, no source.
TEST_CASE("a panel that has lost a section gets a remark, a sound one none") {
    const PanelInService fresh = in_service({.panel = usual_panel().id});
    const heatmatch::DiodeCurve then = fresh.as_new.at(900.0, 45.0);
    const auto with_volts = [&](double share) {
        const PanelMeasurement reading{.v_oc = share * then.open_circuit_voltage_v(),
                                       .irradiance_w_m2 = 900.0,
                                       .cell_temperature_c = 45.0};
        return in_service({.panel = usual_panel().id, .measured = reading});
    };
    REQUIRE(with_volts(2.0 / 3.0).remarks.size() == 1);
    CHECK(contains(with_volts(2.0 / 3.0).remarks.front(), "bypassed section"));
    CHECK(contains(with_volts(2.0 / 3.0).remarks.front(), "66.7%"));
    CHECK(contains(with_volts(2.0 / 3.0).remarks.front(), usual_panel().id));
    CHECK(with_volts(0.97).remarks.empty());
    // Its cold voltage is still the label's: the section may come back.
    CHECK(with_volts(2.0 / 3.0).cold.v_oc_at_25_c == usual_panel().v_oc);
}

TEST_CASE("a current far from the label requests a check of the sun meter") {
    const PanelInService fresh = in_service({.panel = usual_panel().id});
    const double label = fresh.as_new.at(700.0, 40.0).short_circuit_current_a();
    const PanelMeasurement reading{
        .i_sc = 1.3 * label, .irradiance_w_m2 = 700.0, .cell_temperature_c = 40.0};
    const PanelInService service = in_service({.panel = usual_panel().id, .measured = reading});
    REQUIRE(service.remarks.size() == 1);
    CHECK(contains(service.remarks.front(), "sun meter"));
    // Margins follow the larger current.
    CHECK(service.i_sc_limit_a == doctest::Approx(1.3 * usual_panel().i_sc).epsilon(1e-9));
}

TEST_CASE("a measured voltage above the label raises the cold voltage") {
    const PanelInService fresh = in_service({.panel = usual_panel().id});
    const PanelMeasurement reading{.v_oc = 1.04 *
                                           fresh.as_new.at(1000.0, 25.0).open_circuit_voltage_v()};
    const PanelInService service = in_service({.panel = usual_panel().id, .measured = reading});
    CHECK(service.cold.v_oc == doctest::Approx(1.04 * fresh.cold.v_oc).epsilon(1e-9));
}

TEST_CASE("class defaults travel with the panel as assumptions") {
    const Panel torn{.id = "torn",
                     .label = "torn",
                     .technology = heatmatch::Technology::multi_si,
                     .v_oc = 37.5,
                     .i_sc = 8.66};
    const PanelInService service = in_service({.panel = "torn"}, torn);
    for (const char* field : {"v_mp", "i_mp", "alpha_isc_pct_per_k", "beta_voc_pct_per_k",
                              "gamma_pmp_pct_per_k", "power_tolerance_pct"}) {
        CAPTURE(std::string(field));
        CHECK(assumes(service, field));
    }
    for (const auto& assumption : service.assumed) {
        CHECK(contains(assumption.part, "torn"));
        CHECK(!assumption.value.empty());
        CHECK(!assumption.source.empty());
    }
    // Source: medians of multicrystalline silicon in the CEC module list.
    CHECK(*service.panel.v_mp == doctest::Approx(0.808 * 37.5).epsilon(1e-3));
    CHECK(*service.panel.i_mp == doctest::Approx(0.938 * 8.66).epsilon(1e-3));
    CHECK(*service.panel.beta_voc_pct_per_k == -0.339);
}

TEST_CASE("a label no diode can have is refused") {
    Panel panel = usual_panel();
    panel.i_mp = panel.i_sc + 0.1;
    CHECK_THROWS_AS(in_service({.panel = panel.id}, panel), heatmatch::InvalidInput);
}
