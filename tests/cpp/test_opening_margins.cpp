#include "demo.hpp"

#include <doctest/doctest.h>

#include "heatmatch/match/margins/opening_margins.hpp"

using heatmatch::Circuit;
using heatmatch::Hookup;
using heatmatch::Margin;
using heatmatch::opening_margins;
using heatmatch::PlacedDevice;
using heatmatch::Severity;

namespace {

/// 86.8 V at -20 °C and 8.66 A a string, one run in air of 30 °C, one device.
Circuit opened_by(PlacedDevice placed, Hookup panels = {2, 1}) {
    Circuit circuit = bench_circuit("silicon-60-cell-245", panels, "tubular-1000-120", {1, 1});
    circuit.runs = {bench_run("thhn-12-awg", 30.0)};
    circuit.devices = {std::move(placed)};
    return circuit;
}

Margin opening_margin(const Circuit& circuit, std::string_view name, double sun = 1000.0) {
    return margin_of(opening_margins(circuit, {.irradiance_w_m2 = sun}), name);
}

}  // namespace

// Source: common practice, no source: what a hand, and nothing else, opens is a disconnect.
TEST_CASE("only a rated switch that opens all conductors by hand is a disconnect") {
    const auto alone = [](const char* id, int poles = 1, heatmatch::Hookup panels = {2, 1}) {
        const Margin margin =
            opening_margin(opened_by(bench_device(id, "breaks dc", poles), panels), "disconnect");
        check_sentence(margin);
        CHECK(margin.source == "nec-690-13");
        CHECK((margin.severity == Severity::danger) == (margin.consequence == Severity::danger));
        return margin.severity;
    };
    for (const char* id : {"pv-isolator-2-pole", "pv-isolator-16-a", "pv-switch-fuses-600-v",
                           "dc-breaker-non-polarised-2-pole"}) {
        CAPTURE(std::string(id));
        CHECK(alone(id, 2) == Severity::none);
    }
    // As the only one: a fuse, a semiconductor, 30 V contacts, or what is made for alternating
    // current. The last was a warning before; it holds an arc as they do.
    for (const char* id : {"gpv-fuse-10x38", "gpv-fuse-20-a", "dc-solid-state-relay-200-v",
                           "snap-disc-fixed", "ac-toggle-switch", "battery-rotary-switch"}) {
        CAPTURE(std::string(id));
        CHECK(alone(id) == Severity::danger);
    }
    CHECK(alone("dc-contactor-sealed-450-v") == Severity::warning);
    CHECK(alone("dc-breaker-polarised-2-pole", 1) == Severity::warning);  // one conductor
    CHECK(alone("pv-isolator-2-pole", 2, {8, 1}) == Severity::warning);   // 347 V for one pole
    const Circuit bare = opened_by(bench_device("snap-disc-fixed", "senses only", 1, ""));
    CHECK(opening_margin(bare, "disconnect").severity == Severity::warning);
    // A good one beside a bad one is enough.
    Circuit both = opened_by(bench_device("gpv-fuse-10x38", "breaks dc"));
    both.devices.push_back(bench_device("pv-isolator-2-pole", "breaks dc", 2));
    CHECK(opening_margin(both, "disconnect").severity == Severity::none);
    // A contactor beside it makes nothing better: it was a warning before, and the fuse is still
    // what a hand would pull.
    both.devices.back() = bench_device("dc-contactor-sealed-450-v", "breaks dc");
    CHECK(opening_margin(both, "disconnect").severity == Severity::danger);
    both.devices.clear();  // nothing entered at all
    CHECK(opening_margin(both, "disconnect").severity == Severity::warning);
    check_sentence(opening_margin(both, "disconnect"));
}

TEST_CASE("the number of poles is requested where nothing determines it") {
    PlacedDevice placed = bench_device("pv-isolator-2-pole", "breaks dc", 2);
    placed.control.poles.reset();
    placed.control.dc_ratings = {{.v_dc = 600.0, .a_dc = 16.0, .poles = 1}};
    const Margin margin = opening_margin(opened_by(placed), "disconnect");
    CHECK(margin.severity == Severity::warning);
    CHECK(margin.missing == std::vector<std::string>{"control.poles"});
}

TEST_CASE("a limit counts as one where its driven device opens the circuit") {
    const Circuit bare = opened_by(bench_device("snap-disc-fixed", "senses only", 1, ""));
    CHECK(opening_margin(bare, "independent limit").severity == Severity::warning);
    for (const char* id : {"snap-disc-manual-reset", "thermal-link"}) {
        CAPTURE(std::string(id));
        PlacedDevice limit = bench_device(id, "senses only", 1, "");
        limit.device.set_c = 120.0;
        const auto with_limit = [&limit](const PlacedDevice& other) {
            Circuit circuit = opened_by(limit);
            circuit.devices.push_back(other);
            const Margin margin = opening_margin(circuit, "independent limit");
            check_sentence(margin);
            return margin;
        };
        const PlacedDevice contactor = bench_device("dc-contactor-sealed-450-v", "breaks dc");
        // What it drives is not told: a contactor that is there does not count by itself.
        CHECK(with_limit(contactor).severity == Severity::warning);
        CHECK(with_limit(contactor).missing == std::vector<std::string>{"device.drives"});
        limit.device.drives = {"dc-contactor-sealed-450-v", "pv-isolator-2-pole",
                               "dc-solid-state-relay-200-v", "general-purpose-relay"};
        CHECK(with_limit(contactor).severity == Severity::none);
        // A hand, a semiconductor and contacts for 30 V do not count.
        CHECK(with_limit(bench_device("pv-isolator-2-pole", "breaks dc", 2)).severity ==
              Severity::warning);
        CHECK(with_limit(bench_device("dc-solid-state-relay-200-v", "breaks dc")).severity ==
              Severity::warning);
        CHECK(with_limit(bench_device("general-purpose-relay", "breaks dc")).severity ==
              Severity::warning);
    }
}

TEST_CASE("one contactor for thermostat and limit is a common cause, and reported") {
    PlacedDevice limit = bench_device("snap-disc-manual-reset", "senses only", 1, "");
    limit.device.set_c = 120.0;
    limit.device.drives = {"dc-contactor-sealed-450-v"};
    PlacedDevice thermostat = bench_device("snap-disc-fixed", "senses only", 1, "");
    thermostat.device.set_c = 80.0;
    thermostat.device.drives = limit.device.drives;
    Circuit circuit = opened_by(limit);
    circuit.devices.push_back(thermostat);
    circuit.devices.push_back(bench_device("dc-contactor-sealed-450-v", "breaks dc"));
    const Margin shared = opening_margin(circuit, "independent limit");
    CHECK(shared.severity == Severity::caution);
    CHECK(contains(shared.sentence(), "weld"));
    // Not told what the thermostat drives, or set to what it is not made for: it may be the same.
    circuit.devices[1].device.drives.clear();
    CHECK(opening_margin(circuit, "independent limit").severity == Severity::caution);
    circuit.devices[1].device.drives = limit.device.drives;
    circuit.devices[1].device.set_c = 1000.0;
    CHECK(opening_margin(circuit, "independent limit").severity == Severity::caution);
    circuit.devices[1].device.set_c = 80.0;
    circuit.devices[1].device.drives = {"dc-contactor-open-150-v"};
    circuit.devices.push_back(bench_device("dc-contactor-open-150-v", "breaks dc"));
    CHECK(opening_margin(circuit, "independent limit").severity == Severity::none);
}

TEST_CASE("in sun that is brighter than the contacts allow, a limit opens nothing") {
    PlacedDevice limit = bench_device("snap-disc-manual-reset", "senses only", 1, "");
    limit.device.set_c = 120.0;
    limit.device.drives = {"general-purpose-relay"};
    Circuit circuit = opened_by(limit);
    circuit.devices.push_back(bench_device("general-purpose-relay", "breaks dc"));
    circuit.devices.back().control.dc_ratings = {{.v_dc = 100.0, .a_dc = 11.0, .poles = 1}};
    const auto limited = [&circuit](double sun) {
        return opening_margin(circuit, "independent limit", sun).severity;
    };
    CHECK(limited(1000.0) == Severity::none);  // 10.8 A
    CHECK(limited(1100.0) == Severity::warning);
}
