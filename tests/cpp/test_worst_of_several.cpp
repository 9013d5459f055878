#include "demo.hpp"
#include "each_place.hpp"
#include "judged_candidate.hpp"

#include <doctest/doctest.h>

#include "heatmatch/match/margins/array_margins.hpp"
#include "heatmatch/match/margins/fuse_margins.hpp"
#include "heatmatch/match/margins/limits.hpp"
#include "heatmatch/match/margins/run_margins.hpp"

// Where a margin is judged at the worst of several things, that one counts wherever it stands in
// their list, and it is the one that is named and valued. Source: the definition of the worst.

using heatmatch::Circuit;
using heatmatch::Hookup;
using heatmatch::Margin;
using heatmatch::PlacedDevice;
using heatmatch::RunParts;
using heatmatch::Severity;

namespace {

/// 8.66 A and 43.4 V each on the coldest morning; their label allows a series fuse of 15 A.
Circuit strings_limited_to_15_a(Hookup panels) {
    Circuit circuit = silicon_circuit(panels);
    circuit.panel.panel.max_series_fuse_a = 15.0;
    return circuit;
}

PlacedDevice fuse_rated(double amperes) {
    PlacedDevice fuse = bench_device("gpv-fuse-10x38", "protects a string", 1, "");
    fuse.control.dc_ratings.front().a_dc = amperes;
    return fuse;
}

bool lacks_field(const Margin& margin, const char* field) {
    return std::count(margin.missing.begin(), margin.missing.end(), field) > 0;
}

}  // namespace

// NEC 690.9, from memory: a faulty string is fed through its fuse, and by no more than the others.
TEST_CASE("of several string fuses the largest counts, up to the current of the others") {
    in_each_place(fuse_rated(30.0), fuse_rated(10.0), [](const auto& fuses) {
        Circuit circuit = strings_limited_to_15_a({1, 6});
        circuit.devices = fuses;
        const auto reverse = [&] {
            return margin_of(array_margins(circuit, cold_site), "reverse current");
        };
        check_judged(reverse(), Severity::danger, 30.0, 15.0);
        CHECK(contains(reverse().sentence(), "fuses of 30 A"));
        circuit.panels = {1, 2};
        check_judged(reverse(), Severity::none, 1.25 * 8.66, 15.0);
        circuit.panel.panel.max_series_fuse_a = 10.0;
        check_judged(reverse(), Severity::danger, 1.25 * 8.66, 10.0);
    });
}

// NEC 240.4, from memory: 15 A for 14 AWG, 30 A for 10 AWG.
TEST_CASE("of several strings' wires the thinnest counts for the fuse, and is named") {
    in_each_place(spliced_run("thin", "thhn-14-awg"), spliced_run("thick", "thhn-10-awg"),
                  [](auto runs) {
                      for (RunParts& parts : runs) parts.run.carries = heatmatch::Carried::string;
                      Circuit circuit = strings_limited_to_15_a({1, 4});
                      circuit.runs = runs;
                      const auto wire = [&](const PlacedDevice& fuse) {
                          circuit.devices = {fuse};
                          return margin_of(fuse_margins(circuit, fuse), "string fuse wire");
                      };
                      const Margin large = wire(fuse_rated(20.0));
                      CHECK(large.severity == Severity::danger);
                      CHECK(*large.value == 20.0);
                      CHECK(*large.limit == 15.0);
                      CHECK(*large.headroom == doctest::Approx(-1.0 / 3.0));
                      CHECK(contains(large.sentence(), "the wire of \"thin\""));
                      CHECK(wire(fuse_rated(15.0)).severity == Severity::none);
                      // Of the pairs of one fuse the one of most amperes is what it lets through.
                      const heatmatch::DcRating pair = fuse_rated(10.0).control.dc_ratings.front();
                      heatmatch::DcRating largest = pair;
                      largest.a_dc = 25.0;
                      in_each_place(largest, pair, [&](const auto& ratings) {
                          PlacedDevice fuse = fuse_rated(10.0);
                          fuse.control.dc_ratings = ratings;
                          CHECK(*wire(fuse).value == 25.0);
                      });
                  });
}

TEST_CASE("of several runs the worst is named, by heat, by its joint and by its voltage") {
    RunParts hot = spliced_run("worst", "thhn-12-awg", 110.0);
    RunParts joint = spliced_run("worst", "thhn-12-awg");
    joint.connector->current_rating_a = 2.0;
    RunParts volts = spliced_run("worst", "thhn-12-awg");
    volts.wire->voltage_rating_v = 20.0;
    for (RunParts* worst : {&hot, &joint, &volts}) {
        const RunParts harmless = spliced_run("harmless", "silicone-12-awg", 40.0);
        in_each_place(*worst, harmless, [&](const auto& runs) {
            Circuit circuit = strings_limited_to_15_a({1, 1});
            circuit.runs = runs;
            const std::vector<Margin> all = run_margins(circuit, cold_site);
            const auto candidate = with_margins(all);
            const Margin* found = candidate.worst();
            REQUIRE(found != nullptr);
            CHECK(found->subject == "run \"worst\"");
            CHECK(found->severity >= Severity::warning);
            const auto alone = run_margins(circuit, cold_site, *worst);
            CHECK(*margin_of(alone, found->name).value == *found->value);
            CHECK(count_margins(all, found->name, "worst") == 1);
        });
    }
}

TEST_CASE("without a store the terminals have the temperature of the hottest of several wires") {
    in_each_place(spliced_run("hot", "thhn-12-awg", 85.0), spliced_run("cool", "thhn-12-awg", 20.0),
                  [](auto runs) {
                      for (RunParts& parts : runs) parts.run.carries = heatmatch::Carried::bank;
                      Circuit circuit = strings_limited_to_15_a({1, 1});
                      circuit.runs = runs;
                      const double found_c = *heatmatch::terminal_temperature_c(circuit, cold_site);
                      circuit.runs = {spliced_run("hot", "thhn-12-awg", 85.0)};
                      circuit.runs.front().run.carries = heatmatch::Carried::bank;
                      CHECK(found_c == *heatmatch::terminal_temperature_c(circuit, cold_site));
                      CHECK(found_c > 85.0);
                  });
}

// IEC 60364-4-41, from memory: covers help where every wire behind them is insulated.
TEST_CASE("one wire of several without known insulation leaves touch voltage a warning") {
    RunParts unknown = spliced_run("bad", "thhn-12-awg");
    unknown.wire->voltage_rating_v.reset();
    RunParts weak = spliced_run("bad", "thhn-12-awg");
    weak.wire->voltage_rating_v = 50.0;
    const heatmatch::Site covered{.record_low_c = -20.0, .wet = false, .live_parts_enclosed = true};
    for (const RunParts& bad : {unknown, weak}) {
        in_each_place(bad, spliced_run("good", "thhn-12-awg"), [&](const auto& runs) {
            Circuit circuit = strings_limited_to_15_a({2, 1});
            circuit.runs = runs;
            const Margin touch = margin_of(array_margins(circuit, covered), "touch voltage");
            CHECK(touch.severity == Severity::warning);
            CHECK(lacks_field(touch, "voltage_rating_v") == !bad.wire->voltage_rating_v);
        });
    }
}

TEST_CASE("of several margins the worst determines verdict, headroom and nearest limit") {
    const Margin worst{.name = "worst",
                       .severity = Severity::danger,
                       .worst_severity = Severity::danger,
                       .headroom = -0.4};
    const Margin harmless{.name = "harmless",
                          .severity = Severity::none,
                          .worst_severity = Severity::none,
                          .headroom = 0.5};
    in_each_place(worst, harmless, [](const auto& margins) {
        const auto candidate = with_margins(margins);
        REQUIRE(candidate.worst() != nullptr);
        CHECK(candidate.worst()->name == "worst");
        CHECK(candidate.severity() == Severity::danger);
        CHECK(candidate.worst_severity() == Severity::danger);
        CHECK(candidate.smallest_headroom() == -0.4);
        CHECK(candidate.nearest_limit()->name == "worst");
        CHECK(heatmatch::screen_margins(margins).reason == "worst");
    });
}
