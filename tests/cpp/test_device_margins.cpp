#include "demo.hpp"

#include <doctest/doctest.h>

#include "heatmatch/match/margins/device_margins.hpp"

using heatmatch::Circuit;
using heatmatch::device_margins;
using heatmatch::Hookup;
using heatmatch::Installation;
using heatmatch::Margin;
using heatmatch::PlacedDevice;
using heatmatch::Severity;

namespace {

/// 86.8 V at -20 °C and 8.66 A a string, one run in air of 30 °C, one device.
Circuit with_device(PlacedDevice placed, Hookup panels = {2, 1}) {
    Circuit circuit = bench_circuit("silicon-60-cell-245", panels, "tubular-1000-120", {1, 1});
    circuit.runs = {bench_run("thhn-12-awg", 30.0)};
    circuit.devices = {std::move(placed)};
    return circuit;
}

std::vector<Margin> device_margins_of(const Circuit& circuit, double sun = 1000.0) {
    Installation installation;
    installation.site = {.record_low_c = -20.0, .bright_irradiance_w_m2 = sun};
    return device_margins(circuit, installation.site);
}

Margin device_margin(const Circuit& circuit, std::string_view name) {
    return margin_of(device_margins_of(circuit), name);
}

constexpr double string_v = 37.53 * (1.0 + 0.00347 * 45.0);
constexpr double isc = 8.66;

}  // namespace

// Source: the printed pair, 600 V and 16 A with two poles in series; 1.25 x 8.66 A = 10.8 A.
TEST_CASE("a device breaks by its printed pair of voltage and current") {
    const PlacedDevice isolator = bench_device("pv-isolator-2-pole", "breaks dc", 2);
    check_judged(device_margin(with_device(isolator), "dc breaking"), Severity::none, 1.25 * isc,
                 16.0);
    check_judged(device_margin(with_device(isolator, {1, 2}), "dc breaking"), Severity::danger,
                 2.5 * isc, 16.0);
    // 14 panels in series stand at 607 V: no pair reaches that.
    check_judged(device_margin(with_device(isolator, {14, 1}), "dc breaking"), Severity::danger,
                 14.0 * string_v, 600.0);
    CHECK(contains(device_margin(with_device(isolator), "dc breaking").sentence(), "86.8 V"));
}

TEST_CASE("irradiance above 1000 W/m2 raises the current to break") {
    const Circuit circuit = with_device(bench_device("pv-isolator-2-pole", "breaks dc", 2));
    CHECK(*margin_of(device_margins_of(circuit, 1300.0), "dc breaking").value ==
          doctest::Approx(1.3 * 1.25 * isc));
}

TEST_CASE("a device in a string's run breaks the string's share") {
    Circuit circuit = with_device(bench_device("pv-isolator-2-pole", "breaks dc", 2), {1, 3});
    circuit.runs.front().run.carries = heatmatch::Carried::string;
    check_judged(device_margin(circuit, "dc breaking"), Severity::none, 1.25 * isc, 16.0);
}

// Source: the printed pairs, 125 V with one pole, 250 V with two.
TEST_CASE("only the poles that are used count") {
    const auto breaker = [](int poles) {
        return bench_device("dc-breaker-polarised-2-pole", "breaks dc", poles);
    };
    check_judged(device_margin(with_device(breaker(1), {4, 1}), "dc breaking"), Severity::danger,
                 4.0 * string_v, 125.0);
    check_judged(device_margin(with_device(breaker(2), {4, 1}), "dc breaking"), Severity::none,
                 1.25 * isc, 32.0);
    // The isolator's only pair is for two poles.
    const Margin one = device_margin(
        with_device(bench_device("pv-isolator-2-pole", "breaks dc", 1)), "dc breaking");
    CHECK(one.severity == Severity::danger);
    CHECK(*one.headroom < 0.0);
    CHECK(contains(one.sentence(), "poles used"));
    check_sentence(one);
}

TEST_CASE("a device for alternating current only must not break direct current") {
    for (const char* id :
         {"ac-toggle-switch", "water-heater-surface-thermostat", "ac-solid-state-relay"}) {
        CAPTURE(std::string(id));
        const Margin margin =
            device_margin(with_device(bench_device(id, "breaks dc")), "dc breaking");
        CHECK(margin.severity == Severity::danger);
        CHECK(*margin.headroom < 0.0);
        CHECK(contains(margin.sentence(), "86.8 V"));
        CHECK(!margin.source.empty());
        check_sentence(margin);
    }
}

// Source: what sheets of such parts often say, 30 V and 1 A; common practice, no source.
TEST_CASE("a device without a direct-current rating is judged at 30 V and 1 A") {
    PlacedDevice placed = bench_device("pv-isolator-2-pole", "breaks dc", 2);
    placed.control.dc_ratings.clear();
    const Margin margin = device_margin(with_device(placed), "dc breaking");
    check_judged(margin, Severity::danger, 2.0 * string_v, 30.0);
    REQUIRE(margin.assumed.size() == 1);
    CHECK(margin.assumed.front().field == "dc_ratings");
    CHECK(margin.assumed.front().value.text() == "30 V, 1 A");
    CHECK(device_margin(with_device(bench_device("pv-isolator-2-pole", "breaks dc", 2)),
                        "dc breaking")
              .assumed.empty());
    // A small panel stands below 30 V, yet 1 A is not enough.
    Circuit small = bench_circuit("silicon-36-cell-90", {1, 1}, "immersion-dc-200-12", {1, 1});
    small.runs = {bench_run("thhn-12-awg", 30.0)};
    small.devices = {placed};
    check_judged(device_margin(small, "dc breaking"), Severity::danger, 1.25 * 5.37, 1.0);
    // Just passed, it is no better than a pair for other poles.
    small = bench_circuit("silicon-60-cell-245", {1, 1}, "tubular-1000-120", {1, 1});
    small.devices = {placed};
    CHECK(*device_margin(small, "dc breaking").headroom <= -1.0);
}

TEST_CASE("a thermostat that only senses need not break") {
    PlacedDevice disc = bench_device("snap-disc-fixed", "senses only", 1, "");
    CHECK(count_margins(device_margins_of(with_device(disc)), "dc breaking") == 0);
    disc.device.run = "bench";
    const Margin inside = device_margin(with_device(disc), "dc breaking");
    CHECK(inside.severity == Severity::warning);
    CHECK(contains(inside.sentence(), "bench"));
    CHECK(!inside.source.empty());
}

TEST_CASE("polarity is reported, and assumed where nothing is printed") {
    const Margin marked = device_margin(
        with_device(bench_device("dc-breaker-polarised-2-pole", "breaks dc", 2)), "polarity");
    CHECK(marked.severity == Severity::caution);
    CHECK(marked.assumed.empty());
    const Margin unmarked =
        device_margin(with_device(bench_device("pv-isolator-2-pole", "breaks dc", 2)), "polarity");
    CHECK(unmarked.severity == Severity::caution);
    REQUIRE(unmarked.assumed.size() == 1);
    CHECK(unmarked.assumed.front().field == "polarised");
    CHECK(contains(unmarked.sentence(), "not stated"));
    CHECK(unmarked.missing == std::vector<std::string>{"control.polarised"});
    const Margin free = device_margin(
        with_device(bench_device("dc-breaker-non-polarised-2-pole", "breaks dc", 2)), "polarity");
    CHECK(free.severity == Severity::none);
    CHECK(free.assumed.empty());
}

// Source: makers of breakers, on polarised ones that others feed: reversed, the arc may stay.
TEST_CASE("a device that breaks one way only must not be in a string that others feed") {
    const auto polarity = [](std::optional<bool> polarised, Hookup panels,
                             const char* duty = "breaks dc") {
        PlacedDevice breaker = bench_device("dc-breaker-polarised-2-pole", duty, 2);
        breaker.control.polarised = polarised;
        Circuit circuit = with_device(breaker, panels);
        circuit.runs.front().run.carries = heatmatch::Carried::string;
        const Margin margin = device_margin(circuit, "polarity");
        check_sentence(margin);
        return margin;
    };
    for (const char* duty : {"breaks dc", "protects a string"}) {
        CAPTURE(std::string(duty));
        CHECK(polarity(true, {1, 2}, duty).severity == Severity::danger);
        CHECK(*polarity(true, {1, 2}, duty).headroom < 0.0);
        CHECK(polarity(true, {2, 1}, duty).severity == Severity::caution);
        CHECK(polarity(false, {1, 2}, duty).severity == Severity::none);
        const Margin untold = polarity(std::nullopt, {1, 2}, duty);
        CHECK(untold.severity == Severity::warning);
        CHECK(untold.missing == std::vector<std::string>{"control.polarised"});
        REQUIRE(untold.assumed.size() == 1);
        CHECK(untold.assumed.front().field == "polarised");
    }
    // In the run of the whole array nothing behind it feeds back.
    CHECK(device_margin(
              with_device(bench_device("dc-breaker-polarised-2-pole", "breaks dc", 2), {1, 2}),
              "polarity")
              .severity == Severity::caution);
    PlacedDevice fuse = bench_device("gpv-fuse-10x38", "protects a string", 1, "");
    CHECK(device_margin(with_device(fuse, {1, 2}), "polarity").severity == Severity::none);
    fuse.control.polarised.reset();
    CHECK(device_margin(with_device(fuse, {1, 2}), "polarity").severity == Severity::none);
}

// Source: rest at 20 °C in a room; the isolator's body may reach 60 °C.
TEST_CASE("a device's body is judged by the air of its run") {
    Circuit circuit = with_device(bench_device("pv-isolator-2-pole", "breaks dc", 2));
    check_judged(device_margin(circuit, "device temperature"), Severity::none, 30.0, 60.0, 20.0);
    circuit.runs.front().run.surroundings.air_c = 80.0;
    check_judged(device_margin(circuit, "device temperature"), Severity::warning, 80.0, 60.0, 20.0);
    circuit.devices.front().control.own_limit_c.reset();
    check_not_assessed(device_margin(circuit, "device temperature"), "own_limit_c");
    circuit = with_device(bench_device("pv-isolator-2-pole", "breaks dc", 2, ""));
    check_not_assessed(device_margin(circuit, "device temperature"), "run.surroundings.air_c");
}

TEST_CASE("a fuse must not break direct current, whatever its rating") {
    const Margin margin =
        device_margin(with_device(bench_device("gpv-fuse-20-a", "breaks dc")), "dc breaking");
    CHECK(margin.severity == Severity::danger);
    CHECK(*margin.headroom < 0.0);
    check_sentence(margin);
}

TEST_CASE("every control of the starter is judged in every duty without an empty place") {
    for (const heatmatch::Control& control : starter().controls) {
        for (const char* duty : {"breaks dc", "carries dc", "protects a string", "senses only"}) {
            for (const char* run : {"bench", ""}) {
                CAPTURE(control.id);
                CAPTURE(std::string(duty));
                const auto margins =
                    device_margins_of(with_device(bench_device(control.id, duty, 2, run)));
                for (const Margin& margin : margins) {
                    check_sentence(margin);
                    CHECK(!margin.source.empty());
                }
            }
        }
    }
}
