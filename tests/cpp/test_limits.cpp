#include "demo.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "heatmatch/match/margins/bank_margins.hpp"
#include "heatmatch/match/margins/limits.hpp"
#include "heatmatch/match/margins/tail_margins.hpp"

using heatmatch::Bank;
using heatmatch::Circuit;
using heatmatch::Extremes;
using heatmatch::Hookup;
using heatmatch::Margin;
using heatmatch::Severity;

namespace {

/// Power of one element of `own` ohm in series with others and parallel to other branches.
void try_ohms(Extremes& found, const heatmatch::ArrayCurve& bright, Hookup hookup, double wire_ohm,
              double own, double mate, double other, bool survivor) {
    const double branch = own + (hookup.series - 1) * mate;
    double conductance = 1.0 / branch;
    for (int k = 1; k < hookup.parallel; ++k) conductance += 1.0 / (hookup.series * other);
    const double current = bright.into_resistance(1.0 / conductance + wire_ohm).current_a;
    const double share = current / conductance / branch;
    if (survivor) {
        found.survivor_power_w = std::max(found.survivor_power_w, share * share * own);
        return;
    }
    found.current_a = std::max(found.current_a, current);
    found.element_power_w = std::max(found.element_power_w, share * share * own);
    found.element_voltage_v = std::max(found.element_voltage_v, share * own);
}

/// Largest power and volts of one element by a scan: equal ohms finely, unequal ones coarsely.
Extremes scan(const heatmatch::ArrayCurve& bright, const Bank& bank, double wire_ohm) {
    Extremes found;
    const auto ohm_at = [&](int i, int steps) {
        return bank.each.low_ohm + (bank.each.high_ohm - bank.each.low_ohm) * i / steps;
    };
    const auto both = [&](double own, double mate, double other) {
        try_ohms(found, bright, bank.hookup, wire_ohm, own, mate, other, false);
        if (bank.hookup.parallel < 2) return;
        const Hookup left{.series = bank.hookup.series, .parallel = bank.hookup.parallel - 1};
        try_ohms(found, bright, left, wire_ohm, own, mate, other, true);
    };
    for (int i = 0; i <= 1000; ++i) {
        const double ohm = ohm_at(i, 1000);
        both(ohm, ohm, ohm);
    }
    constexpr int steps = 6;
    for (int own = 0; own <= steps; ++own) {
        for (int mate = 0; mate <= steps; ++mate) {
            for (int other = 0; other <= steps; ++other) {
                both(ohm_at(own, steps), ohm_at(mate, steps), ohm_at(other, steps));
            }
        }
    }
    return found;
}

}  // namespace

// Source: the definition: full sun of the site, cells at record low + 20 K, panels as new.
TEST_CASE("margins are judged on the brightest cold morning with panels as new") {
    Circuit aged = bench_circuit("silicon-60-cell-245", {2, 2}, "tubular-1000-120", {1, 1});
    aged.owned.age_years = 25.0;
    aged.panel = heatmatch::panel_in_service(
        aged.owned, heatmatch::find_panel(starter(), "silicon-60-cell-245"), -20.0);
    heatmatch::Site bright = cold_site;
    bright.bright_irradiance_w_m2 = 1250.0;
    const auto curve = heatmatch::bright_curve(aged.panel, aged.panels, bright);
    const auto expected = heatmatch::Array::uniform(aged.panel.as_new, 2, 2).at(1250.0, 0.0);
    CHECK(curve.into_resistance(14.0).power_w ==
          doctest::Approx(expected.into_resistance(14.0).power_w).epsilon(1e-12));
    CHECK(curve.open_circuit_voltage_v() ==
          doctest::Approx(expected.open_circuit_voltage_v()).epsilon(1e-12));
}

TEST_CASE("measured current and voltage above the label count on the bright morning") {
    const heatmatch::Panel& panel = heatmatch::find_panel(starter(), "silicon-60-cell-245");
    const auto fresh = heatmatch::panel_in_service({.panel = panel.id}, panel, -20.0);
    const auto stc = fresh.as_new.at(1000.0, 25.0);
    heatmatch::OwnedPanels owned{.panel = panel.id};
    owned.measured = heatmatch::PanelMeasurement{.v_oc = 1.04 * stc.open_circuit_voltage_v(),
                                                 .i_sc = 1.05 * stc.short_circuit_current_a()};
    const auto measured = heatmatch::panel_in_service(owned, panel, -20.0);
    const auto before = heatmatch::bright_curve(fresh, {1, 1}, cold_site);
    const auto after = heatmatch::bright_curve(measured, {1, 1}, cold_site);
    CHECK(after.short_circuit_current_a() ==
          doctest::Approx(1.05 * before.short_circuit_current_a()).epsilon(1e-6));
    CHECK(after.open_circuit_voltage_v() >= 1.039 * before.open_circuit_voltage_v());
}

// Source: IEC 60028, copper: 0.393 % more ohms each kelvin above 20 °C.
TEST_CASE("a warmer wire gives its element no better margins") {
    Circuit circuit = bench_circuit("silicon-60-cell-245", {2, 2}, "tubular-1000-120", {1, 2});
    circuit.runs = {bench_run("thhn-14-awg", 40.0)};
    circuit.runs.front().run.length_m = 60.0;
    CHECK(heatmatch::coldest_wire_c(cold_site) == -20.0);
    CHECK(heatmatch::coldest_wire_c({.record_low_c = 25.0}) == 20.0);
    CHECK(circuit.wire_ohm_at(-20.0) ==
          doctest::Approx(circuit.wire_ohm_at(20.0) * (1.0 - 0.00393 * 40.0)).epsilon(1e-9));
    const auto at = [&circuit](double conductor_c) {
        circuit.runs.front().conductor_c = conductor_c;
        return heatmatch::bright_extremes(circuit, cold_site);
    };
    const Extremes cold = at(-20.0);
    const Extremes hot = at(150.0);
    CHECK(hot.element_power_w == cold.element_power_w);
    CHECK(hot.element_voltage_v == cold.element_voltage_v);
    CHECK(hot.survivor_power_w == cold.survivor_power_w);
    const auto shade_c = [&circuit, &cold](double conductor_c) {
        circuit.runs.front().conductor_c = conductor_c;
        return *margin_of(heatmatch::bank_margins(circuit, cold), "shade stress").value;
    };
    CHECK(shade_c(150.0) == shade_c(20.0));
    // What the wire takes is judged hot.
    const auto drop = [&circuit, &cold](double conductor_c) {
        circuit.runs.front().conductor_c = conductor_c;
        return *margin_of(heatmatch::bank_margins(circuit, cold), "voltage drop").value;
    };
    CHECK(drop(150.0) > drop(20.0));
}

// Source: a scan of equal and of unequal ohms of the elements. The library tries five
// values of the one under test: 1e-3.
TEST_CASE("the largest power and voltage of an element are those of a scan over its resistance") {
    for (const char* panel : {"silicon-60-cell-245", "cdte-100", "half-cut-144-cell-545"}) {
        for (const char* element : {"tubular-1000-120", "immersion-3500-240", "cartridge-300-48",
                                    "immersion-dc-300-24", "strip-500-240"}) {
            for (const Hookup bank : heatmatch::hookups_up_to(4)) {
                const Circuit circuit = bench_circuit(panel, {2, 1}, element, bank);
                CAPTURE(circuit.title());
                CAPTURE(std::string(panel));
                const auto bright =
                    heatmatch::bright_curve(circuit.panel, circuit.panels, cold_site);
                const Extremes found = heatmatch::extremes(bright, circuit.bank, 0.2);
                const Extremes expected = scan(bright, circuit.bank, 0.2);
                CHECK(found.element_power_w >= expected.element_power_w * (1.0 - 1e-3));
                CHECK(found.element_voltage_v >= expected.element_voltage_v * (1.0 - 1e-3));
                CHECK(found.survivor_power_w >= expected.survivor_power_w * (1.0 - 1e-3));
                CHECK(found.current_a >= expected.current_a * (1.0 - 1e-3));
                CHECK(found.element_power_w <= expected.element_power_w * (1.0 + 1e-3));
                CHECK(found.element_voltage_v <= expected.element_voltage_v * (1.0 + 1e-3));
            }
        }
    }
}

TEST_CASE("the screen of a bank finds the headroom its margins have") {
    int wrong = 0;
    int unseen = 0;
    for (const heatmatch::Element& element : starter().elements) {
        for (const std::optional<double> air_c :
             {std::optional<double>{}, std::optional<double>{60.0}, std::optional<double>{120.0},
              std::optional<double>{105.0}, std::optional<double>{260.0}}) {
            Circuit circuit = bench_circuit("silicon-60-cell-245", {4, 1}, element.id, {1, 2});
            if (air_c) {
                circuit.runs = {bench_run("silicone-14-awg", air_c)};
                circuit.runs.front().run.carries = heatmatch::Carried::bank;
            }
            const auto bright = heatmatch::bright_curve(circuit.panel, circuit.panels, cold_site);
            const Extremes extremes = heatmatch::extremes(bright, circuit.bank, circuit.wire_ohm());
            const auto screened = heatmatch::screen_bank(
                extremes, heatmatch::bank_limits(circuit.bank, nullptr), circuit.cold_voltage_v(),
                heatmatch::terminal_temperature_c(circuit, cold_site));
            std::vector<Margin> margins = heatmatch::bank_margins(circuit, extremes);
            for (const Margin& margin :
                 heatmatch::tail_margins(circuit, cold_site, extremes, std::nullopt)) {
                margins.push_back(margin);
            }
            const auto full = heatmatch::screen_margins(margins);
            const bool same = std::fabs(screened.headroom - full.headroom) < 1e-12 &&
                              screened.reason == full.reason;
            if (same) continue;
            ++wrong;
            if ((screened.headroom < 0.0) != (full.headroom < 0.0)) {
                ++unseen;
                INFO(element.id << " in " << air_c.value_or(0.0) << " °C");
                if (unseen == 1) CHECK(screened.headroom == full.headroom);
            }
        }
    }
    CHECK_MESSAGE(unseen == 0, "dangers that the screen does not see");
    CHECK_MESSAGE(wrong == 0, "headrooms that differ");
}

TEST_CASE("only margins whose passing is a danger set the headroom") {
    std::vector<Margin> margins;
    margins.push_back({.name = "warm", .consequence = Severity::warning, .headroom = -3.0});
    CHECK(heatmatch::screen_margins(margins).headroom == 1.0);
    CHECK(heatmatch::screen_margins(margins).reason.empty());
    margins.push_back({.name = "half", .consequence = Severity::danger, .headroom = 0.5});
    margins.push_back({.name = "unknown", .consequence = Severity::danger});
    margins.push_back({.name = "least", .consequence = Severity::danger, .headroom = 0.2});
    CHECK(heatmatch::screen_margins(margins).headroom == 0.2);
    CHECK(heatmatch::screen_margins(margins).reason == "least");
}
