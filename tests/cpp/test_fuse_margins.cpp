#include "demo.hpp"

#include <doctest/doctest.h>

#include "heatmatch/match/margins/fuse_margins.hpp"

using heatmatch::Circuit;
using heatmatch::Hookup;
using heatmatch::Margin;
using heatmatch::PlacedDevice;
using heatmatch::Severity;

namespace {

/// 86.8 V at -20 °C and 8.66 A a string, whose run has that wire.
Circuit fused(const PlacedDevice& fuse, Hookup panels, const char* wire = "thhn-12-awg") {
    Circuit circuit = bench_circuit("silicon-60-cell-245", panels, "tubular-1000-120", {1, 1});
    circuit.runs = {bench_run(wire, 30.0)};
    circuit.runs.front().run.carries = heatmatch::Carried::string;
    circuit.devices = {fuse};
    return circuit;
}

Margin fuse_margin_of(const Circuit& circuit, std::string_view name) {
    return margin_of(fuse_margins(circuit, circuit.devices.front()), name);
}

constexpr double fused_string_v = 37.53 * (1.0 + 0.00347 * 45.0);
constexpr double fused_isc = 8.66;

}  // namespace

// Source: NEC 690.9, from memory: a string fuse holds 1.56 Isc, 13.5 A here.
TEST_CASE("a string fuse has a sufficient current rating and clears the string's voltage") {
    PlacedDevice fuse = bench_device("gpv-fuse-10x38", "protects a string", 1, "");
    check_judged(fuse_margin_of(fused(fuse, {2, 3}), "string fuse"), Severity::none,
                 1.5625 * fused_isc, 15.0);
    fuse.control.dc_ratings.front().a_dc = 20.0;
    check_judged(fuse_margin_of(fused(fuse, {2, 3}), "string fuse"), Severity::none,
                 1.5625 * fused_isc, 20.0);
    fuse.control.dc_ratings.front().a_dc = 12.0;
    check_judged(fuse_margin_of(fused(fuse, {2, 3}), "string fuse"), Severity::caution,
                 1.5625 * fused_isc, 12.0);
    fuse = bench_device("blade-fuse-32-v", "protects a string", 1, "");
    check_judged(fuse_margin_of(fused(fuse, {2, 3}), "string fuse"), Severity::danger,
                 2.0 * fused_string_v, 32.0);
    fuse.control.dc_ratings.clear();
    const Margin unrated = fuse_margin_of(fused(fuse, {2, 3}), "string fuse");
    CHECK(unrated.severity == Severity::danger);
    CHECK(*unrated.headroom < 0.0);
    check_sentence(unrated);
}

// Source: NEC 690.9: what is told to protect a string has to open by current.
TEST_CASE("a device that does not open by current protects no string") {
    const Margin margin = fuse_margin_of(
        fused(bench_device("dc-contactor-sealed-450-v", "protects a string"), {2, 3}),
        "string fuse");
    CHECK(margin.severity == Severity::danger);
    check_sentence(margin);
}

TEST_CASE("behind the joint of the strings, or breaking one way only, it protects no string") {
    Circuit circuit = fused(bench_device("gpv-fuse-10x38", "protects a string"), {2, 3});
    CHECK(fuse_margin_of(circuit, "string fuse").severity == Severity::none);
    circuit.runs.front().run.carries = heatmatch::Carried::array;
    const Margin behind = fuse_margin_of(circuit, "string fuse");
    CHECK(behind.severity == Severity::danger);
    CHECK(contains(behind.sentence(), "after the point where the strings are joined"));
    check_sentence(behind);
    circuit.panels.parallel = 1;  // one string is the array
    CHECK(fuse_margin_of(circuit, "string fuse").severity == Severity::none);
    circuit = fused(bench_device("dc-breaker-polarised-2-pole", "protects a string", 2), {2, 3});
    const Margin one_way = fuse_margin_of(circuit, "string fuse");
    CHECK(one_way.severity == Severity::danger);
    check_sentence(one_way);
    circuit.devices.front().control.polarised = false;
    CHECK(fuse_margin_of(circuit, "string fuse").severity == Severity::none);
}

// Source: NEC 240.4(D): 15 A on 14 AWG, 20 A on 12 AWG, 30 A on 10 AWG.
TEST_CASE("a string fuse protects its wire up to the rating that the code permits") {
    const auto judged = [](const char* fuse, const char* wire, Hookup panels) {
        const Margin margin =
            fuse_margin_of(fused(bench_device(fuse, "protects a string", 1, ""), panels, wire),
                           "string fuse wire");
        check_sentence(margin);
        return margin;
    };
    const Margin small = judged("gpv-fuse-20-a", "thhn-14-awg", {2, 3});
    CHECK(small.severity == Severity::danger);  // two others feed 21.7 A
    CHECK(*small.value == 20.0);
    CHECK(*small.limit == 15.0);
    CHECK(*small.headroom == doctest::Approx(-1.0 / 3.0));
    // Two strings: the other one feeds 10.8 A, which the wire carries.
    CHECK(judged("gpv-fuse-20-a", "thhn-14-awg", {2, 2}).severity == Severity::warning);
    // Exactly the permitted rating is no finding.
    for (const char* wire : {"thhn-12-awg", "thhn-10-awg"}) {
        const Margin within = judged("gpv-fuse-20-a", wire, {2, 3});
        CHECK(within.severity == Severity::none);
        CHECK(*within.headroom == 1.0);
    }
    CHECK(judged("gpv-fuse-10x38", "thhn-14-awg", {2, 3}).severity == Severity::none);
}

TEST_CASE("the thinnest wire of the strings counts, and an unknown one is named as missing") {
    Circuit circuit =
        fused(bench_device("gpv-fuse-20-a", "protects a string", 1, ""), {2, 3}, "thhn-10-awg");
    circuit.runs.push_back(bench_run("thhn-14-awg", 30.0));
    CHECK(fuse_margin_of(circuit, "string fuse wire").severity == Severity::none);  // of the array
    circuit.runs.back().run.carries = heatmatch::Carried::string;
    CHECK(fuse_margin_of(circuit, "string fuse wire").severity == Severity::danger);
    circuit.runs.front().wire.reset();
    CHECK(fuse_margin_of(circuit, "string fuse wire").severity == Severity::danger);
    circuit.runs.pop_back();
    check_not_assessed(fuse_margin_of(circuit, "string fuse wire"), "run.wire");
    circuit.runs.clear();
    check_not_assessed(fuse_margin_of(circuit, "string fuse wire"), "run.wire");
    circuit.devices.front().control.dc_ratings.clear();
    check_not_assessed(fuse_margin_of(circuit, "string fuse wire"), "dc_ratings");
}
