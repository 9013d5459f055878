#include "demo.hpp"
#include "refusal.hpp"

#include <doctest/doctest.h>

#include "heatmatch/match/candidate/assess.hpp"
#include "heatmatch/operation/days/store_switch.hpp"

using namespace heatmatch;

namespace {

/// The demo's circuit with those devices, all in its first run.
std::vector<StoreSwitch> switches_of(std::vector<Device> devices, heatmatch::Sentences& remarks) {
    Installation installation = demo();
    installation.devices = std::move(devices);
    return store_switches(assess(starter(), installation).circuit, remarks);
}

Device contactor(const char* part = "dc-contactor-sealed-450-v") {
    return {.part = part, .run = "home run", .duty = heatmatch::Duty::breaks_dc};
}

Device disc(std::vector<std::string> drives) {
    return {.part = "snap-disc-fixed",
            .duty = heatmatch::Duty::senses_only,
            .set_c = 90.0,
            .drives = std::move(drives)};
}

}  // namespace

TEST_CASE("a thermostat that senses acts through a contactor that can break the circuit") {
    heatmatch::Sentences remarks;
    const auto switches = switches_of({contactor(),
                                       disc({"dc-contactor-sealed-450-v"}),
                                       {.part = "snap-disc-manual-reset",
                                        .duty = heatmatch::Duty::senses_only,
                                        .set_c = 150.0,
                                        .senses = heatmatch::SensedPlace::lid,
                                        .drives = {"dc-contactor-sealed-450-v"}}},
                                      remarks);
    REQUIRE(switches.size() == 2);
    CHECK(switches[0].resets);
    CHECK(switches[0].can_break);
    CHECK(switches[0].breaks == "dc-contactor-sealed-450-v");
    CHECK(switches[0].senses == heatmatch::SensedPlace::wall);
    CHECK(switches[0].opens_c == 90.0);
    CHECK(switches[0].closes_c == 75.0);  // the disc's 15 K
    CHECK_FALSE(switches[1].resets);
    CHECK(switches[1].senses == heatmatch::SensedPlace::lid);
    CHECK(remarks.empty());
}

TEST_CASE("a device that cannot break direct current counts as welded") {
    heatmatch::Sentences remarks;
    const auto relay =
        switches_of({contactor("general-purpose-relay"), disc({"general-purpose-relay"})}, remarks);
    REQUIRE(relay.size() == 1);
    CHECK_FALSE(relay[0].can_break);
    REQUIRE(remarks.size() == 1);
    CHECK(holds(remarks[0], "welded closed"));
    // A thermostat for alternating current straight in the circuit.
    remarks.clear();
    const auto direct = switches_of({{.part = "water-heater-surface-thermostat",
                                      .run = "home run",
                                      .duty = heatmatch::Duty::breaks_dc,
                                      .set_c = 60.0}},
                                    remarks);
    REQUIRE(direct.size() == 1);
    CHECK_FALSE(direct[0].can_break);
}

TEST_CASE("a device without a set point, or without contacts, never opens and is reported") {
    heatmatch::Sentences remarks;
    CHECK(switches_of(
              {contactor(), {.part = "snap-disc-fixed", .duty = heatmatch::Duty::senses_only}},
              remarks)
              .empty());
    REQUIRE(remarks.size() == 1);
    CHECK(holds(remarks[0], "set_c"));
    remarks.clear();
    // A hand switch does not open automatically.
    CHECK(switches_of({{.part = "pv-isolator-2-pole",
                        .run = "home run",
                        .duty = heatmatch::Duty::breaks_dc,
                        .poles_used = 2},
                       disc({"pv-isolator-2-pole"})},
                      remarks)
              .empty());
    REQUIRE(remarks.size() == 1);
    CHECK(holds(remarks[0], "no device that it commands"));
    remarks.clear();
    // A contactor that is there is not yet one that it drives.
    CHECK(switches_of({contactor(), disc({})}, remarks).empty());
    REQUIRE(remarks.size() == 1);
    CHECK(holds(remarks[0], "The device that it opens is not stated"));
}

TEST_CASE("a semiconductor is permitted for a thermostat, and counts as welded for a limit") {
    heatmatch::Sentences remarks;
    const auto switches = switches_of({contactor("dc-solid-state-relay-200-v"),
                                       disc({"dc-solid-state-relay-200-v"}),
                                       {.part = "snap-disc-manual-reset",
                                        .duty = heatmatch::Duty::senses_only,
                                        .set_c = 150.0,
                                        .drives = {"dc-solid-state-relay-200-v"}}},
                                      remarks);
    REQUIRE(switches.size() == 2);
    CHECK(switches[0].can_break);
    CHECK_FALSE(switches[1].can_break);
    REQUIRE(remarks.size() == 1);
    CHECK(holds(remarks[0], "fails shorted"));
}

TEST_CASE("a control with a set point outside its range never opens, and is reported") {
    heatmatch::Sentences remarks;
    Device far = disc({"dc-contactor-sealed-450-v"});
    far.set_c = 350.0;  // made for 40 to 200 °C
    CHECK(switches_of({contactor(), far}, remarks).empty());
    REQUIRE(remarks.size() == 1);
    CHECK(holds(remarks[0], "never to open"));
    CHECK(holds(remarks[0], "200 °C"));
}

TEST_CASE("only a limit stays open: other sensing devices may weld") {
    Circuit circuit = assess(starter(), demo()).circuit;
    heatmatch::Sentences remarks;
    for (PlacedDevice& placed : circuit.devices) {
        if (placed.control.id == "snap-disc-manual-reset") placed.control.reset.reset();
    }
    const auto switches = store_switches(circuit, remarks);
    REQUIRE(switches.size() == 2);
    CHECK(switches[0].resets);
    CHECK(switches[1].resets);  // it was taken for a limit before
}

// Source: IEC 60947-3: a pair holds at its volts and its amperes; by hand: strings of two panels
// side by side give 1.25 times 2 * 8.66 A, 21.65 A, in the run that carries both.
TEST_CASE("contacts break up to their rating, and not a volt or a tenth of an ampere more") {
    Circuit circuit = bench_circuit("silicon-60-cell-245", {2, 2}, "tubular-1000-120", {1, 1});
    circuit.runs = {bench_run("thhn-12-awg", 30.0), bench_run("thhn-12-awg", 30.0)};
    circuit.runs.back().run.name = "tail";
    circuit.runs.back().run.carries = Carried::branch;
    const double volts = circuit.cold_voltage_v();
    const auto breaks = [&circuit](double v_dc, double a_dc, const char* run) {
        PlacedDevice relay = bench_device("dc-contactor-sealed-450-v", "breaks dc", 1, run);
        relay.control.dc_ratings = {{.v_dc = v_dc, .a_dc = a_dc, .poles = 1}};
        PlacedDevice sensor = bench_device("capillary-thermostat-90", "senses only", 1, "");
        sensor.device.set_c = 80.0;
        sensor.device.drives = {"dc-contactor-sealed-450-v"};
        circuit.devices = {relay, sensor};
        heatmatch::Sentences remarks;
        const auto made = store_switches(circuit, remarks, {.floating = false});
        REQUIRE(made.size() == 1);
        CHECK(remarks.empty() == made.front().can_break);
        return made.front().can_break;
    };
    // The branch that is opened last breaks all of it.
    for (const char* run : {"bench", "tail"}) {
        CAPTURE(std::string(run));
        CHECK(breaks(volts + 1e-6, 21.65 + 1e-6, run));
        CHECK_FALSE(breaks(volts - 1.0, 21.65 + 1e-6, run));
        CHECK_FALSE(breaks(volts + 1e-6, 21.55, run));
        CHECK_FALSE(breaks(0.5 * volts, 100.0, run));
    }
}
