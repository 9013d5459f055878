#include "assumed.hpp"
#include "refusal.hpp"

#include <optional>

#include <doctest/doctest.h>

#include "heatmatch/parts/bifaciality.hpp"
#include "heatmatch/solar/panel_in_service.hpp"

using heatmatch::Panel;
using heatmatch::panel_in_service;
using heatmatch::PanelInService;
using heatmatch::rear_current_factor;
using heatmatch::Technology;

namespace {

Panel plain_panel(std::optional<Technology> technology = Technology::mono_si) {
    Panel panel{.id = "plain", .technology = technology, .v_oc = 40.0, .i_sc = 10.0};
    panel.provenance.source = "label";
    return panel;
}

}  // namespace

// Source: IEC 61215-1, BNPI 135 and BSI 300 W/m2 behind; permits in the United States add 1.30 to
// tilted bifacial modules and 1.05 to flush ones whatever their bifaciality (solarapp-bifacial).
TEST_CASE("the current with rear light is the label's, else follows from the bifaciality") {
    Panel panel = plain_panel();
    CHECK(rear_current_factor(panel, false) == 1.0);
    panel.bifaciality = 0.7;
    CHECK(rear_current_factor(panel, false) == doctest::Approx(1.21));
    CHECK(rear_current_factor(panel, true) == doctest::Approx(1.05));
    panel.bifaciality = 0.1;
    CHECK(rear_current_factor(panel, true) == doctest::Approx(1.03));
    panel.bifaciality = heatmatch::careful_bifaciality;
    CHECK(rear_current_factor(panel, false) == doctest::Approx(1.30));
    panel.bifaciality = 0.7;
    panel.i_sc_bnpi = 10.0 * (1.0 + 0.135 * 0.8);  // the label wins
    CHECK(rear_current_factor(panel, false) == doctest::Approx(1.24));
    panel.i_sc_bsi = 12.2;
    CHECK(rear_current_factor(panel, false) == doctest::Approx(1.22));
    CHECK(*heatmatch::labelled_bifaciality(panel) == doctest::Approx(0.8));
}

TEST_CASE("an unstated bifaciality is zero, the label's, or left to the careful case") {
    const auto told = [](Panel panel, std::optional<double> age_years) {
        return panel_in_service({.group = "row", .panel = "plain", .age_years = age_years}, panel,
                                -20.0);
    };
    const PanelInService untold = told(plain_panel(), std::nullopt);
    CHECK(!untold.panel.bifaciality);
    CHECK(untold.rear.none());
    CHECK(untold.bright_isc_a() == 10.0);
    CHECK(untold.at_careful_end().bright_isc_a() == doctest::Approx(13.0));
    CHECK(assumes(untold, "bifaciality"));
    CHECK(!told(plain_panel({}), std::nullopt).panel.bifaciality);
    // Old cells, multicrystalline ones and thin film have opaque backs.
    CHECK(told(plain_panel(), 15.0).panel.bifaciality == 0.0);
    CHECK(!told(plain_panel(Technology::heterojunction), 15.0).panel.bifaciality);
    CHECK(told(plain_panel(Technology::multi_si), {}).panel.bifaciality == 0.0);
    CHECK(told(plain_panel(Technology::cdte), {}).panel.bifaciality == 0.0);
    Panel labelled = plain_panel();
    labelled.i_sc_bnpi = 10.945;
    CHECK(*told(labelled, {}).panel.bifaciality == doctest::Approx(0.7));
    CHECK(told(labelled, {}).bright_isc_a() == doctest::Approx(12.1));
}

TEST_CASE("a wall behind the panels blocks the light, and little of the current for margins") {
    Panel panel = plain_panel();
    panel.bifaciality = 0.8;
    heatmatch::OwnedPanels row{.group = "row", .panel = "plain"};
    const PanelInService untold = panel_in_service(row, panel, -20.0);
    CHECK(untold.rear == heatmatch::RearShare{.low = 0.0, .typical = 0.8, .high = 1.04});
    CHECK(assumes(untold, "rear_blocked"));
    row.rear_blocked = false;
    const PanelInService free = panel_in_service(row, panel, -20.0);
    CHECK(free.rear.low == doctest::Approx(0.56));
    CHECK(free.bright_isc_a() == doctest::Approx(12.4));
    row.rear_blocked = true;
    const PanelInService blocked = panel_in_service(row, panel, -20.0);
    CHECK(blocked.rear.none());
    CHECK(blocked.bright_isc_a() == doctest::Approx(10.5));
}

// A clamp meter reads the light behind as well: what it reads is not counted twice.
TEST_CASE("a reading on a bifacial panel holds the light behind it") {
    Panel panel = plain_panel();
    heatmatch::OwnedPanels row{.group = "row", .panel = "plain"};
    const auto curve = panel_in_service(row, panel, -20.0).as_new.at(800.0, 40.0);
    row.measured = heatmatch::PanelMeasurement{.i_sc = curve.short_circuit_current_a(),
                                               .irradiance_w_m2 = 800.0,
                                               .cell_temperature_c = 40.0};
    panel.bifaciality = 0.8;
    const PanelInService read = panel_in_service(row, panel, -20.0);
    CHECK(read.current_factor == doctest::Approx(1.0 / (1.0 + 0.8 * 0.135)).epsilon(1e-3));
    CHECK(assumes(read, "light behind it while measuring"));
    CHECK(read.bright_isc_a() == doctest::Approx(12.4));
}

TEST_CASE("a current with rear light that no panel has is refused") {
    Panel panel = plain_panel();
    const auto refused = [&panel] {
        return refusal_of([&panel] { heatmatch::check_panel(panel); });
    };
    panel.i_sc_bsi = 9.0;
    CHECK(holds(refused(), "i_sc_bsi = 9 A"));
    panel.i_sc_bsi = 13.1;
    CHECK(holds(refused(), "to 13 A"));
    panel.i_sc_bsi = 12.4;
    panel.i_sc_bnpi = 11.5;
    CHECK(holds(refused(), "i_sc_bnpi = 11.5 A"));
    panel.i_sc_bnpi = 11.08;
    CHECK(refused() == "(accepted)");
}
