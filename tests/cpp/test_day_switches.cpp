#include "demo.hpp"
#include "operation/days/day_switches.hpp"

#include <array>

#include <doctest/doctest.h>

#include "heatmatch/match/circuit/opens.hpp"

using heatmatch::Answer;
using heatmatch::Carried;
using heatmatch::Circuit;
using heatmatch::Control;
using heatmatch::DayRun;
using heatmatch::DaySwitches;
using heatmatch::Occasion;
using heatmatch::PlacedDevice;
using heatmatch::SwitchAction;
using heatmatch::SwitchCase;

namespace {

/// Whether the day stands open once every sensor is hotter than any set point.
bool day_opens(const Circuit& circuit, SwitchCase fault) {
    heatmatch::Sentences remarks;
    DaySwitches switches(store_switches(circuit, remarks), fault);
    DayRun run;
    switches.act([](heatmatch::SensedPlace) { return 1e4; }, 1.0, true, run);
    return switches.open();
}

/// Whether assess counts on some sensor of the circuit to open it: a limit as a limit, any other as
/// a thermostat.
bool counted_on(const Circuit& circuit, Occasion occasion) {
    return std::any_of(
        circuit.devices.begin(), circuit.devices.end(), [&](const PlacedDevice& placed) {
            const bool limit = is_limit(placed);
            return placed.control.sense_high_c && limit == (occasion == Occasion::limit) &&
                   opens(circuit, placed, occasion).answer == Answer::yes;
        });
}

std::vector<PlacedDevice> sensors_driving(const std::string& id) {
    std::vector<PlacedDevice> sensors;
    for (const char* sensor :
         {"capillary-thermostat-90", "snap-disc-manual-reset", "insulation-monitor-1000-v"}) {
        PlacedDevice placed = bench_device(sensor, "senses only", 1, "");
        placed.device.set_c = 90.0;
        placed.device.drives = {id};
        sensors.push_back(placed);
    }
    return sensors;
}

/// Every control of the starter in every duty and place, by itself and driven.
template <class Look>
void each_of_the_starter(const Look& look) {
    for (const Control& control : starter().controls) {
        for (const char* duty : {"breaks dc", "carries dc", "protects a string", "senses only"}) {
            for (const auto carries : {Carried::array, Carried::bank, Carried::string}) {
                for (const char* run : {"bench", ""}) {
                    for (const auto set_c : {control.sense_high_c, std::optional<double>{},
                                             std::optional<double>{1250.0}}) {
                        Circuit circuit = bench_circuit("silicon-60-cell-245", {1, 2},
                                                        "tubular-1000-120", {1, 1});
                        circuit.runs = {bench_run("thhn-12-awg", 30.0)};
                        circuit.runs.front().run.carries = carries;
                        PlacedDevice placed =
                            bench_device(control.id, duty, poles_of(control).value_or(1), run);
                        placed.device.set_c = set_c;
                        circuit.devices = {placed};
                        CAPTURE(control.id);
                        CAPTURE(std::string(duty));
                        CAPTURE(static_cast<int>(carries));
                        CAPTURE(std::string(run));
                        look(circuit, placed);
                        for (const PlacedDevice& sensor : sensors_driving(control.id))
                            circuit.devices.push_back(sensor);
                        look(circuit, placed);
                    }
                }
            }
        }
    }
}

}  // namespace

// Source: the definition: one question, opens(), for the margins and for the day.
TEST_CASE(
    "in every duty and place a simulation opens by the devices that assess counts, and by"
    " no others") {
    int opened = 0;
    each_of_the_starter([&](const Circuit& circuit, const PlacedDevice& placed) {
        const bool by_thermostat = counted_on(circuit, Occasion::thermostat);
        const bool by_limit = counted_on(circuit, Occasion::limit);
        CHECK(day_opens(circuit, SwitchCase::works) == (by_thermostat || by_limit));
        CHECK(day_opens(circuit, SwitchCase::thermostat_welded) == by_limit);
        CHECK(by_limit == (heatmatch::opening_limit(circuit) != nullptr));
        CHECK_FALSE(day_opens(circuit, SwitchCase::breaker_welded));
        // By hand and at a fault nothing opens in a day: no more than temperature does.
        if (circuit.devices.size() > 1 && !placed.control.sense_high_c) {
            CHECK((opens(circuit, placed, Occasion::thermostat).answer == Answer::yes) ==
                  by_thermostat);
            CHECK((opens(circuit, placed, Occasion::limit).answer == Answer::yes) == by_limit);
        }
        opened += by_limit ? 1 : 0;
    });
    CHECK(opened > 0);
}

TEST_CASE("a thermostat closes again, a limit stays open, and a stuck one is reported once") {
    Circuit circuit = bench_circuit("silicon-60-cell-245", {2, 1}, "tubular-1000-120", {1, 1});
    circuit.runs = {bench_run("thhn-12-awg", 30.0)};
    circuit.devices = sensors_driving("dc-contactor-sealed-450-v");
    circuit.devices.push_back(bench_device("dc-contactor-sealed-450-v", "breaks dc"));
    const auto lived = [&circuit](SwitchCase fault) {
        heatmatch::Sentences remarks;
        DaySwitches switches(store_switches(circuit, remarks), fault);
        DayRun run;
        for (const double at_c : {20.0, 95.0, 95.0, 20.0}) {
            switches.act([at_c](heatmatch::SensedPlace) { return at_c; }, 1.0, true, run);
        }
        return std::pair(switches.open(), run.events);
    };
    const auto [open, events] = lived(SwitchCase::works);
    CHECK(open);  // by the limit
    REQUIRE(events.size() == 3);
    CHECK(events.back().what == SwitchAction::closes);
    const auto [shut, stuck] = lived(SwitchCase::breaker_welded);
    CHECK_FALSE(shut);
    REQUIRE(stuck.size() == 2);
    CHECK(stuck.front().what == SwitchAction::cannot_open);
}

namespace {

using heatmatch::SensedPlace;
using heatmatch::StoreSwitch;

/// Opens there and closes 10 K lower.
StoreSwitch thermostat(const char* device, double opens_c) {
    return {.device = device, .opens_c = opens_c, .closes_c = opens_c - 10.0};
}

/// Whether the circuit is open after each of those temperatures everywhere in turn.
std::string open_at(DaySwitches& switches, const std::vector<double>& temperatures, DayRun& run) {
    std::string states;
    for (const double at_c : temperatures) {
        switches.act([at_c](SensedPlace) { return at_c; }, 1.0, true, run);
        states += switches.open() ? 'o' : '-';
    }
    return states;
}

}  // namespace

// Source: the definition of a differential: nothing changes between the two points.
TEST_CASE("between its two points a thermostat keeps its state") {
    DayRun run;
    DaySwitches switches({thermostat("disc", 90.0)}, SwitchCase::works);
    CHECK(open_at(switches, {20.0, 89.9, 90.0, 85.0, 80.1, 80.0, 85.0, 89.9, 95.0}, run) ==
          "--ooo---o");
    REQUIRE(run.events.size() == 3);
    CHECK(run.events[1].what == SwitchAction::closes);
}

// Source: the definition: contacts in series are open where one of them is.
TEST_CASE("the first of several thermostats to open opens the circuit, wherever it is listed") {
    for (std::size_t lowest = 0; lowest < 3; ++lowest) {
        CAPTURE(lowest);
        std::vector<StoreSwitch> three(3, thermostat("high", 90.0));
        three[lowest] = thermostat("low", 60.0);
        DayRun run;
        DaySwitches switches(three, SwitchCase::works);
        CHECK(open_at(switches, {59.0, 60.0, 55.0, 50.0, 95.0, 75.0, 49.0}, run) == "-oo-oo-");
        REQUIRE(run.events.size() >= 2);
        CHECK(run.events[0].device == "low");
        CHECK(run.events[1].device == "low");
        CHECK(run.events.size() == 2 + 3 + 3);
        // One that is stuck keeps no other from opening, one that stays open no other from closing.
        three[lowest].can_break = false;
        DayRun stuck;
        DaySwitches welded(three, SwitchCase::works);
        CHECK(open_at(welded, {60.0, 95.0, 79.0}, stuck) == "-o-");
        three[lowest].can_break = true;
        three[lowest].resets = false;
        DayRun limited;
        DaySwitches limit(three, SwitchCase::works);
        CHECK(open_at(limit, {95.0, 20.0, 20.0}, limited) == "ooo");
        CHECK(limited.events.size() == 3 + 2);
    }
}

TEST_CASE("a control acts on the place that it senses, and on no other") {
    constexpr std::array places{SensedPlace::wall, SensedPlace::lid, SensedPlace::bed,
                                SensedPlace::space};
    for (const SensedPlace sensed : places) {
        for (const SensedPlace hot : places) {
            StoreSwitch made = thermostat("disc", 60.0);
            made.senses = sensed;
            DayRun run;
            // Not of the first one's place either.
            DaySwitches switches({thermostat("never", 1e6), made}, SwitchCase::works);
            switches.act([hot](SensedPlace place) { return place == hot ? 70.0 : 20.0; }, 1.0, true,
                         run);
            CHECK(switches.open() == (sensed == hot));
        }
    }
}
