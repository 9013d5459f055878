#include "demo.hpp"

#include <doctest/doctest.h>

#include "heatmatch/match/margins/array_margins.hpp"

using heatmatch::array_margins;
using heatmatch::Circuit;
using heatmatch::Hookup;
using heatmatch::Margin;
using heatmatch::Panel;
using heatmatch::Severity;

namespace {

constexpr double record_low_c = -20.0;

Circuit circuit_of(const Panel& panel, Hookup panels) {
    Circuit circuit{.panels = panels};
    circuit.owned = {.group = "bench", .panel = panel.id, .count = panels.count()};
    circuit.panel = heatmatch::panel_in_service(circuit.owned, panel, record_low_c);
    return circuit;
}

/// 40 V and 8 A, -0.30 %/K: 45.4 V at -20 °C.
Panel round_panel() {
    return {.id = "round",
            .label = "round",
            .technology = heatmatch::Technology::multi_si,
            .v_oc = 40.0,
            .i_sc = 8.0,
            .v_mp = 32.0,
            .i_mp = 7.5,
            .alpha_isc_pct_per_k = 0.05,
            .beta_voc_pct_per_k = -0.30,
            .gamma_pmp_pct_per_k = -0.42,
            .max_system_voltage_v = 600.0,
            .max_series_fuse_a = 15.0,
            .provenance = {.source = "label", .source_kind = heatmatch::SourceKind::nameplate}};
}

Margin array_margin(const Circuit& circuit, std::string_view name, bool wet = false) {
    return margin_of(array_margins(circuit, {.record_low_c = record_low_c, .wet = wet}), name);
}

}  // namespace

// Source: arithmetic, 40 V x (1 + 0.0030 x 45) = 45.4 V a panel.
TEST_CASE("the open string on the coldest morning is held against the panels' own limit") {
    Panel panel = round_panel();
    check_judged(array_margin(circuit_of(panel, {2, 1}), "cold voltage"), Severity::none, 90.8,
                 600.0);
    check_judged(array_margin(circuit_of(panel, {13, 1}), "cold voltage"), Severity::caution, 590.2,
                 600.0);
    check_judged(array_margin(circuit_of(panel, {14, 1}), "cold voltage"), Severity::danger, 635.6,
                 600.0);
    // Strings in parallel add no volts.
    check_judged(array_margin(circuit_of(panel, {2, 3}), "cold voltage"), Severity::none, 90.8,
                 600.0);
    panel.max_system_voltage_v.reset();
    const Margin unknown = array_margin(circuit_of(panel, {2, 1}), "cold voltage");
    check_not_assessed(unknown, "max_system_voltage_v");
    CHECK(contains(unknown.sentence(), "90.8 V"));
}

// Source: NEC 690.7(A), 1.18 at -20 °C, from memory.
TEST_CASE("a cold voltage by the code's table is listed as an assumption") {
    Panel panel = round_panel();
    panel.beta_voc_pct_per_k.reset();
    const Margin margin = array_margin(circuit_of(panel, {2, 1}), "cold voltage");
    check_judged(margin, Severity::none, 2.0 * 40.0 * 1.18, 600.0);
    REQUIRE(margin.assumed.size() == 1);
    CHECK(margin.assumed.front().source.text() == "nec-690-7");
    CHECK(margin.source == "nec-690-7");
    CHECK(array_margin(circuit_of(round_panel(), {2, 1}), "cold voltage").assumed.empty());
}

// Source: IEC 60364-4-41 and -7-705, from memory: 60 V ripple-free direct current dry, 30 V wet.
TEST_CASE("the touch limit is 60 V where dry and 30 V where wet") {
    const Panel panel = round_panel();
    check_judged(array_margin(circuit_of(panel, {1, 1}), "touch voltage"), Severity::none, 45.4,
                 60.0);
    check_judged(array_margin(circuit_of(panel, {2, 1}), "touch voltage"), Severity::warning, 90.8,
                 60.0);
    check_judged(array_margin(circuit_of(panel, {1, 1}), "touch voltage", true), Severity::warning,
                 45.4, 30.0);
    CHECK(
        contains(array_margin(circuit_of(panel, {2, 1}), "touch voltage", true).sentence(), "wet"));
    Panel small = panel;
    small.v_oc = 22.0;
    small.v_mp = 17.6;
    check_judged(array_margin(circuit_of(small, {1, 1}), "touch voltage", true), Severity::none,
                 22.0 * 1.135, 30.0);
    // 58.3 of 60 V is near.
    small.v_oc = 51.37;
    small.v_mp = 41.0;
    CHECK(array_margin(circuit_of(small, {1, 1}), "touch voltage").severity == Severity::caution);
}

// Source: NEC 690.11, from memory: 80 V direct current and more.
TEST_CASE("from 80 V on a series arc is a caution") {
    const Panel panel = round_panel();
    check_judged(array_margin(circuit_of(panel, {1, 1}), "series arc"), Severity::none, 45.4, 80.0);
    check_judged(array_margin(circuit_of(panel, {2, 1}), "series arc"), Severity::caution, 90.8,
                 80.0);
    CHECK(
        contains(array_margin(circuit_of(panel, {1, 1}), "series arc").sentence(), "below it too"));
}

// Source: NEC 690.9 and IEC 62548, from memory: (n - 1) x 1.25 x Isc against the largest series
// fuse.
TEST_CASE("a faulty string is fed by all the others") {
    Panel panel = round_panel();
    const Margin alone = array_margin(circuit_of(panel, {4, 1}), "reverse current");
    CHECK(alone.severity == Severity::none);
    CHECK(*alone.headroom == 1.0);
    CHECK(contains(alone.sentence(), "One string"));
    CHECK(!alone.source.empty());
    check_judged(array_margin(circuit_of(panel, {2, 2}), "reverse current"), Severity::none, 10.0,
                 15.0);
    const Margin three = array_margin(circuit_of(panel, {1, 3}), "reverse current");
    check_judged(three, Severity::danger, 20.0, 15.0);
    CHECK(contains(three.sentence(), "Fuse each string"));
    panel.max_series_fuse_a.reset();
    check_not_assessed(array_margin(circuit_of(panel, {1, 3}), "reverse current"),
                       "max_series_fuse_a");
    // One string needs no limit.
    CHECK(array_margin(circuit_of(panel, {4, 1}), "reverse current").severity == Severity::none);
}

TEST_CASE("string fuses limit the current into a faulty string") {
    Panel panel = round_panel();
    panel.max_series_fuse_a = 20.0;
    Circuit circuit = circuit_of(panel, {1, 4});
    CHECK(array_margin(circuit, "reverse current").severity == Severity::danger);
    circuit.devices = {bench_device("gpv-fuse-10x38", "protects a string", 1, "")};
    const Margin fused = array_margin(circuit, "reverse current");
    // A fuse within the limit of the label is sufficient, also exactly at it.
    CHECK(fused.severity == Severity::none);
    CHECK(*fused.headroom == 1.0);
    CHECK(*fused.value == 15.0);
    CHECK(contains(fused.sentence(), "15 A"));
    circuit.panel.panel.max_series_fuse_a = 10.0;
    check_judged(array_margin(circuit, "reverse current"), Severity::danger, 15.0, 10.0);
    circuit.panel.panel.max_series_fuse_a = 15.0;
    CHECK(array_margin(circuit, "reverse current").severity == Severity::none);
    CHECK(*array_margin(circuit, "reverse current").headroom == 1.0);
    circuit.panel.panel.max_series_fuse_a = 10.0;
    // A fuse that does not clear 45.4 V, or is behind the joint of the strings, does not count.
    circuit.devices = {bench_device("blade-fuse-32-v", "protects a string", 1, "")};
    check_judged(array_margin(circuit, "reverse current"), Severity::danger, 30.0, 10.0);
    circuit.devices = {bench_device("gpv-fuse-10-a", "protects a string")};
    CHECK(array_margin(circuit, "reverse current").severity == Severity::none);
    circuit.runs = {bench_run("thhn-12-awg", 30.0)};
    check_judged(array_margin(circuit, "reverse current"), Severity::danger, 30.0, 10.0);
    circuit.runs.front().run.carries = heatmatch::Carried::string;
    CHECK(array_margin(circuit, "reverse current").severity == Severity::none);
    // A switch is not a fuse, whatever its stated duty.
    circuit.devices = {bench_device("pv-isolator-2-pole", "protects a string", 2, "")};
    check_judged(array_margin(circuit, "reverse current"), Severity::danger, 30.0, 10.0);
    circuit.devices = {bench_device("pv-isolator-2-pole", "breaks dc", 2, "")};
    check_judged(array_margin(circuit, "reverse current"), Severity::danger, 30.0, 10.0);
}

TEST_CASE("a measured current above the label counts for the reverse current") {
    const Panel panel = round_panel();
    Circuit circuit{.panels = {1, 2}};
    circuit.owned = {.group = "bench", .panel = panel.id, .count = 2};
    circuit.owned.measured = heatmatch::PanelMeasurement{.i_sc = 8.8};
    circuit.panel = heatmatch::panel_in_service(circuit.owned, panel, record_low_c);
    check_judged(array_margin(circuit, "reverse current"), Severity::none, 11.0, 15.0);
}

TEST_CASE("panels of one group are assumed to be equal, and that is listed") {
    const Margin several = array_margin(circuit_of(round_panel(), {2, 1}), "string mismatch");
    CHECK(several.consequence == Severity::caution);
    CHECK(*several.limit == 5.0);
    REQUIRE(several.assumed.size() == 1);
    CHECK(several.assumed.front().field == "spread of i_sc");
    CHECK(contains(several.sentence(), "5%"));
    CHECK(array_margin(circuit_of(round_panel(), {1, 1}), "string mismatch").assumed.empty());
}

TEST_CASE("every array has the same six margins, each with a sentence") {
    for (const Panel& panel : starter().panels) {
        for (const Hookup panels : heatmatch::hookups_up_to(4)) {
            CAPTURE(panel.id);
            const auto margins =
                array_margins(circuit_of(panel, panels), {.record_low_c = -32.0, .wet = true});
            CHECK(margins.size() == 6);
            for (const char* name : {"cold voltage", "touch voltage", "series arc",
                                     "reverse current", "string mismatch", "bonding"}) {
                CHECK(count_margins(margins, name) == 1);
            }
            for (const Margin& margin : margins) {
                check_sentence(margin);
                CHECK(!margin.source.empty());
            }
        }
    }
}

// Source: IEC 60364-4-41, from memory: above the limits live parts are insulated or enclosed.
TEST_CASE("covers and known insulation reduce touch voltage to a caution, unknown ones do not") {
    Circuit circuit = circuit_of(round_panel(), {2, 1});
    const auto touch = [&circuit](std::optional<bool> wet, std::optional<bool> enclosed) {
        const heatmatch::Site site{
            .record_low_c = record_low_c, .wet = wet, .live_parts_enclosed = enclosed};
        return margin_of(array_margins(circuit, site), "touch voltage");
    };
    const auto misses = [](const Margin& margin, const char* field) {
        return std::count(margin.missing.begin(), margin.missing.end(), field) > 0;
    };
    CHECK(touch(true, true).severity == Severity::warning);
    CHECK(misses(touch(true, true), "runs"));
    circuit.runs = {bench_run("silicone-14-awg", 30.0)};
    const Margin covered = touch(true, true);
    CHECK(covered.severity == Severity::caution);
    CHECK(contains(covered.sentence(), "stated to be enclosed"));
    check_sentence(covered);
    // Stated to be within reach; it was a warning before, as if not stated.
    const Margin open = touch(true, false);
    CHECK(open.severity == Severity::danger);
    CHECK(open.consequence == Severity::danger);
    CHECK(*open.headroom < 0.0);
    CHECK(contains(open.sentence(), "within reach"));
    check_sentence(open);
    CHECK(touch(false, false).severity == Severity::danger);
    CHECK(touch(true, std::nullopt).severity == Severity::warning);
    CHECK(misses(touch(true, std::nullopt), "site.live_parts_enclosed"));
    circuit.runs.front().wire->voltage_rating_v.reset();
    CHECK(touch(true, true).severity == Severity::warning);
    CHECK(misses(touch(true, true), "voltage_rating_v"));
    circuit.runs.front().wire->voltage_rating_v = 50.0;
    CHECK(touch(true, true).severity == Severity::warning);
    circuit.runs.front().insulation.reset();
    CHECK(misses(touch(true, true), "insulation"));
}

TEST_CASE("below the limit live parts within reach are no finding") {
    const Circuit circuit = circuit_of(round_panel(), {1, 1});
    const auto touch = [&circuit](bool wet) {
        const heatmatch::Site site{
            .record_low_c = record_low_c, .wet = wet, .live_parts_enclosed = false};
        return margin_of(array_margins(circuit, site), "touch voltage");
    };
    check_judged(touch(false), Severity::none, 45.4, 60.0);
    check_judged(touch(true), Severity::danger, 45.4, 30.0);
}

TEST_CASE("a place without any statement counts as wet") {
    const Circuit circuit = circuit_of(round_panel(), {1, 1});
    const Margin unstated =
        margin_of(array_margins(circuit, {.record_low_c = record_low_c}), "touch voltage");
    check_judged(unstated, Severity::warning, 45.4, 30.0);
    CHECK(contains(unstated.sentence(), "judged as wet"));
    CHECK(std::count(unstated.missing.begin(), unstated.missing.end(), "site.wet") == 1);
}
