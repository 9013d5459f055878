#include "demo.hpp"

#include <set>

#include <doctest/doctest.h>

#include "heatmatch/match/circuit/opens.hpp"

using heatmatch::Answer;
using heatmatch::Circuit;
using heatmatch::Control;
using heatmatch::Obstacle;
using heatmatch::Occasion;
using heatmatch::Opening;
using heatmatch::opens;
using heatmatch::PlacedDevice;

namespace {

/// Two panels of 60 cells in series: 86.8 V at -20 °C, 1.25 times 8.66 A.
Circuit pair_of_panels(heatmatch::Hookup panels = {2, 1}) {
    Circuit circuit = bench_circuit("silicon-60-cell-245", panels, "tubular-1000-120", {1, 1});
    circuit.runs = {bench_run("thhn-12-awg", 30.0)};
    return circuit;
}

/// One panel of 36 cells: below 30 V, 1.25 times 5.37 A.
Circuit small_panel() {
    Circuit circuit = bench_circuit("silicon-36-cell-90", {1, 1}, "immersion-dc-200-12", {1, 1});
    circuit.runs = {bench_run("thhn-12-awg", 30.0)};
    return circuit;
}

/// With every pole that it has.
PlacedDevice placed_as(const Control& control, std::string_view duty, std::string_view run) {
    PlacedDevice placed = bench_device(control.id, duty, poles_of(control).value_or(1), run);
    placed.device.set_c = control.sense_high_c;
    return placed;
}

/// What makes it open: a thermostat, a limit and a monitor of earth faults.
void drive(Circuit& circuit, const std::string& id) {
    for (const char* driver :
         {"capillary-thermostat-90", "snap-disc-manual-reset", "insulation-monitor-1000-v"}) {
        PlacedDevice placed = bench_device(driver, "senses only", 1, "");
        placed.device.set_c = 90.0;
        placed.device.drives = {id};
        circuit.devices.push_back(placed);
    }
}

/// Answers by hand, as thermostat, as limit and at a fault: y, n or ?.
std::string answers(const Circuit& circuit, const PlacedDevice& placed) {
    std::string letters;
    for (const Occasion occasion :
         {Occasion::by_hand, Occasion::thermostat, Occasion::limit, Occasion::fault}) {
        const Opening opening = opens(circuit, placed, occasion);
        CHECK(!opening.why.empty());
        CHECK((opening.answer == Answer::unknown) == !opening.missing.empty());
        letters += opening.answer == Answer::yes ? 'y' : opening.answer == Answer::no ? 'n' : '?';
    }
    return letters;
}

struct Family {
    const char* why;
    std::vector<std::string> ids;
    /// It breaks dc: at two panels alone, and driven by thermostat, limit and monitor; at one small
    /// panel alone, and driven.
    const char* answers;
};

/// Decided by hand from what is printed of each; common practice, no source, where it is a fact of
/// the trade. Only what breaks direct current in a run of the whole circuit can open it.
const std::vector<Family>& families() {
    static const std::vector<Family> all{
        {"a rated hand switch with a pole or more in each conductor",
         {"pv-isolator-4-pole", "pv-isolator-2-pole", "pv-isolator-16-a", "pv-isolator-25-a",
          "pv-isolator-32-a", "dc-breaker-polarised-2-pole", "dc-breaker-non-polarised-2-pole",
          "pv-switch-fuses-600-v", "pv-switch-fuses-1000-v"},
         "ynnn ynnn ynnn ynnn"},
        {"a fuse is no switch, and one string blows none",
         {"gpv-fuse-2-a", "gpv-fuse-3-a", "gpv-fuse-5-a", "gpv-fuse-8-a", "gpv-fuse-10-a",
          "gpv-fuse-12-a", "gpv-fuse-10x38", "gpv-fuse-20-a", "blade-fuse-32-v",
          "functional-earth-fuse-1-a"},
         "nnnn nnnn nnnn nnnn"},
        {"for alternating current only",
         {"water-heater-surface-thermostat", "thermal-link", "ac-solid-state-relay",
          "ac-toggle-switch"},
         "nnnn nnnn nnnn nnnn"},
        {"contacts for 30 V and 1 to 6 A",
         {"snap-disc-fixed", "snap-disc-manual-reset", "capillary-thermostat-90",
          "capillary-thermostat-300", "capillary-thermostat-500", "limit-controller-thermocouple",
          "vent-thermostat", "snap-action-switch", "insulation-monitor-1000-v"},
         "nnnn nnnn nnnn nnnn"},
        {"senses, 30 V and 10 A, closes again",
         {"digital-temperature-switch-12v", "digital-temperature-switch-thermocouple"},
         "nnnn nnnn nynn nynn"},
        {"opens when its coil is let go",
         {"dc-contactor-sealed-450-v", "dc-contactor-open-150-v"},
         "nnnn nyyy nnnn nyyy"},
        {"a relay for 30 V and 10 A", {"general-purpose-relay"}, "nnnn nnnn nnnn nyyy"},
        {"a semiconductor fails shorted: a thermostat's, never a limit's",
         {"dc-solid-state-relay-100-v", "dc-solid-state-relay-200-v"},
         "nnnn nynn nnnn nynn"},
        {"the same for 10 A", {"dc-solid-state-relay-400-v"}, "nnnn nnnn nnnn nynn"},
        {"48 V and one pole: one conductor stays",
         {"ac-breaker-48-v-dc-listed"},
         "nnnn nnnn nnnn nnnn"},
        {"no pair is printed",
         {"battery-rotary-switch", "shorting-switch", "ground-fault-indicator", "panel-meter-dc",
          "surge-protector-dc-type-2"},
         "nnnn nnnn nnnn nnnn"},
    };
    return all;
}

std::string driven_answers(Circuit circuit, const PlacedDevice& placed) {
    drive(circuit, placed.control.id);
    circuit.devices.push_back(placed);
    return answers(circuit, placed);
}

/// What a control answers that is not there to break: only what it drives could open, and that is
/// not told.
std::string of_another_duty(const Control& control) {
    const bool limit = control.sense_high_c && stays_open(control);
    const bool monitors =
        control.detects && operated_of(control) != heatmatch::OperatedKind::by_current;
    return std::string("n") + (control.sense_high_c ? '?' : 'n') + (limit ? '?' : 'n') +
           (monitors ? '?' : 'n');
}

}  // namespace

TEST_CASE("every control of the starter opens according to its family, and no more") {
    std::set<std::string> decided;
    for (const Family& family : families()) {
        CAPTURE(std::string(family.why));
        for (const std::string& id : family.ids) {
            CAPTURE(id);
            CHECK(decided.insert(id).second);
            const Control& control = heatmatch::find_control(starter(), id);
            const PlacedDevice placed = placed_as(control, "breaks dc", "bench");
            const std::string found =
                answers(pair_of_panels(), placed) + ' ' + driven_answers(pair_of_panels(), placed) +
                ' ' + answers(small_panel(), placed) + ' ' + driven_answers(small_panel(), placed);
            CHECK(found == family.answers);
        }
    }
    for (const Control& control : starter().controls) {
        CAPTURE(control.id);
        CHECK(decided.count(control.id) == 1);
    }
}

TEST_CASE("in no run, or in that of one of several strings, nothing opens the circuit") {
    Circuit strings = pair_of_panels({1, 2});
    strings.runs.front().run.carries = heatmatch::Carried::string;
    for (const Control& control : starter().controls) {
        CAPTURE(control.id);
        CHECK(driven_answers(pair_of_panels(), placed_as(control, "breaks dc", "")) == "nnnn");
        CHECK(driven_answers(small_panel(), placed_as(control, "breaks dc", "")) == "nnnn");
        CHECK(driven_answers(strings, placed_as(control, "breaks dc", "bench")) == "nnnn");
    }
}

TEST_CASE("a device without a breaking duty opens only by a driven device, which is requested") {
    for (const Control& control : starter().controls) {
        for (const char* duty : {"carries dc", "senses only", "protects a string"}) {
            for (const char* run : {"bench", ""}) {
                CAPTURE(control.id);
                CAPTURE(std::string(duty));
                CHECK(answers(pair_of_panels(), placed_as(control, duty, run)) ==
                      of_another_duty(control));
            }
        }
    }
}

// Source: NEC 690.13; that the volts share out over the poles of a pair is from memory.
TEST_CASE("in a floating array one conductor's poles break the whole cold voltage") {
    const PlacedDevice isolator = bench_device("pv-isolator-2-pole", "breaks dc", 2);
    const auto by_hand = [](const Circuit& circuit, const PlacedDevice& placed, bool floating) {
        return opens(circuit, placed, Occasion::by_hand, {.floating = floating});
    };
    // 600 V over two poles are 300 V for one: six panels stand at 260 V, eight at 347 V.
    CHECK(by_hand(pair_of_panels({6, 1}), isolator, true).answer == Answer::yes);
    const Opening eight = by_hand(pair_of_panels({8, 1}), isolator, true);
    CHECK(eight.answer == Answer::no);
    CHECK(eight.obstacle == Obstacle::conductors);
    CHECK(by_hand(pair_of_panels({8, 1}), isolator, false).answer == Answer::yes);
    // One pole of a good breaker opens one conductor only.
    const PlacedDevice one_pole = bench_device("dc-breaker-polarised-2-pole", "breaks dc", 1);
    CHECK(by_hand(pair_of_panels(), one_pole, true).obstacle == Obstacle::conductors);
    CHECK(by_hand(pair_of_panels(), one_pole, false).answer == Answer::yes);
    // How many it has is asked for where neither record nor pairs tell.
    PlacedDevice untold = one_pole;
    untold.control.poles.reset();
    untold.control.dc_ratings = {{.v_dc = 250.0, .a_dc = 32.0, .poles = 1}};
    const Opening asked = by_hand(pair_of_panels(), untold, true);
    CHECK(asked.answer == Answer::unknown);
    CHECK(asked.missing == std::vector<std::string>{"control.poles"});
}

// Source: sheets of such discs: made for 70 to 200 °C; a thermocouple's controller up to 1200 °C.
TEST_CASE(
    "a limit with a set point outside its range opens nothing, by itself or a driven "
    "device") {
    Circuit circuit = pair_of_panels();
    const PlacedDevice contactor = bench_device("dc-contactor-sealed-450-v", "breaks dc");
    const auto limit_at = [&](const char* id, double set_c) {
        PlacedDevice limit = bench_device(id, "senses only", 1, "");
        limit.device.set_c = set_c;
        limit.device.drives = {contactor.control.id};
        circuit.devices = {limit, contactor};
        const Opening opening = opens(circuit, limit, Occasion::limit);
        CHECK(opens(circuit, contactor, Occasion::limit).answer == opening.answer);
        CHECK((heatmatch::opening_limit(circuit) != nullptr) == (opening.answer == Answer::yes));
        CHECK((opening.obstacle == Obstacle::out_of_range) == (opening.answer == Answer::no));
        return opening.answer;
    };
    CHECK(limit_at("snap-disc-manual-reset", 70.0) == Answer::yes);
    CHECK(limit_at("snap-disc-manual-reset", 200.0) == Answer::yes);
    CHECK(limit_at("snap-disc-manual-reset", 350.0) == Answer::no);
    CHECK(limit_at("snap-disc-manual-reset", 60.0) == Answer::no);
    CHECK(limit_at("limit-controller-thermocouple", 350.0) == Answer::yes);
    // What it drives may not be told: it opens nothing all the same.
    circuit.devices.front().device.set_c = 1201.0;
    circuit.devices.front().device.drives.clear();
    CHECK(opens(circuit, circuit.devices.front(), Occasion::limit).answer == Answer::no);
    // A second one that is set well is enough for the contactor.
    circuit.devices.front().device.drives = {contactor.control.id};
    circuit.devices.push_back(circuit.devices.front());
    circuit.devices.back().device.set_c = 200.0;
    CHECK(opens(circuit, contactor, Occasion::limit).answer == Answer::yes);
    circuit.devices.front().control.sense_low_c.reset();
    CHECK(contains(opens(circuit, circuit.devices.front(), Occasion::limit).why, "at most"));
}

TEST_CASE("unstated facts are requested, and never count as open") {
    Circuit circuit = pair_of_panels();
    PlacedDevice limit = bench_device("snap-disc-manual-reset", "senses only", 1, "");
    const PlacedDevice contactor = bench_device("dc-contactor-sealed-450-v", "breaks dc");
    circuit.devices = {limit, contactor};
    CHECK(opens(circuit, limit, Occasion::limit).missing ==
          std::vector<std::string>{"device.drives"});
    CHECK(opens(circuit, contactor, Occasion::limit).missing ==
          std::vector<std::string>{"device.drives"});
    CHECK(heatmatch::opening_limit(circuit) == nullptr);
    limit.device.drives = {"dc-contactor-sealed-450-v"};
    CHECK(opens(circuit, limit, Occasion::limit).missing ==
          std::vector<std::string>{"device.set_c"});
    limit.device.set_c = 120.0;
    circuit.devices.front() = limit;
    CHECK(opens(circuit, limit, Occasion::limit).answer == Answer::yes);
    CHECK(opens(circuit, limit, Occasion::limit).breaker == "dc-contactor-sealed-450-v");
    REQUIRE(heatmatch::opening_limit(circuit) != nullptr);
    // A control of an unknown family.
    PlacedDevice gizmo = contactor;
    gizmo.control.family = "gizmo";
    gizmo.control.semiconductor.reset();
    circuit.devices.back() = gizmo;
    CHECK(opens(circuit, limit, Occasion::limit).missing ==
          std::vector<std::string>{"control.semiconductor"});
    gizmo.control.semiconductor = false;
    gizmo.control.operated.reset();
    gizmo.control.reset.reset();
    circuit.devices.back() = gizmo;
    CHECK(opens(circuit, limit, Occasion::limit).missing ==
          std::vector<std::string>{"control.operated"});
}

TEST_CASE("a limit may drive a relay that drives the contactor, and no circle") {
    Circuit circuit = pair_of_panels();
    PlacedDevice limit =
        placed_as(find_control(starter(), "snap-disc-manual-reset"), "senses only", "");
    limit.device.drives = {"general-purpose-relay"};
    PlacedDevice relay = bench_device("general-purpose-relay", "carries dc", 1, "");
    relay.device.drives = {"dc-contactor-sealed-450-v"};
    circuit.devices = {limit, relay, bench_device("dc-contactor-sealed-450-v", "breaks dc")};
    CHECK(opens(circuit, limit, Occasion::limit).answer == Answer::yes);
    // A semiconductor on the way fails shorted too.
    circuit.devices[1].control.semiconductor = true;
    CHECK(opens(circuit, limit, Occasion::limit).answer == Answer::no);
    CHECK(opens(circuit, limit, Occasion::thermostat).answer == Answer::yes);
    circuit.devices[1].control.semiconductor = false;
    circuit.devices[1].device.drives = {"general-purpose-relay"};
    CHECK(opens(circuit, limit, Occasion::limit).answer == Answer::no);
}
