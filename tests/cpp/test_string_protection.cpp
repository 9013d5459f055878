#include "demo.hpp"

#include <doctest/doctest.h>

#include "heatmatch/match/circuit/opens.hpp"
#include "heatmatch/match/circuit/string_protection.hpp"

using heatmatch::Answer;
using heatmatch::Carried;
using heatmatch::Circuit;
using heatmatch::in_a_string;
using heatmatch::may_be_fed_backwards;
using heatmatch::Obstacle;
using heatmatch::Occasion;
using heatmatch::Opening;
using heatmatch::PlacedDevice;
using heatmatch::string_protection_a;

namespace {

/// Panels of 60 cells, 43.4 V at -20 °C and 8.66 A a string, in one run.
Circuit strings_of(heatmatch::Hookup panels, Carried carries = Carried::array) {
    Circuit circuit = bench_circuit("silicon-60-cell-245", panels, "tubular-1000-120", {1, 1});
    circuit.runs = {bench_run("thhn-12-awg", 30.0)};
    circuit.runs.front().run.carries = carries;
    return circuit;
}

PlacedDevice protecting(const char* id, std::string_view run = "") {
    return bench_device(id, "protects a string", poles_of(find_control(starter(), id)).value_or(1),
                        run);
}

}  // namespace

// Source: IEC 60269-6, as a data sheet has it: a fuse surely melts at 1.45 times its rating. Three
// other strings feed 26.0 A: enough for 15 A (21.8 A), not for 20 A (29 A).
TEST_CASE("a string fuse opens where the other strings can blow it") {
    const auto at_fault = [](const char* id, heatmatch::Hookup panels) {
        return opens(strings_of(panels), bench_device(id, "protects a string", 1, ""),
                     Occasion::fault)
            .answer;
    };
    CHECK(at_fault("gpv-fuse-10x38", {1, 4}) == Answer::yes);
    CHECK(at_fault("gpv-fuse-12-a", {1, 4}) == Answer::yes);
    CHECK(at_fault("gpv-fuse-20-a", {1, 4}) == Answer::no);
    CHECK(at_fault("gpv-fuse-10x38", {1, 2}) == Answer::no);
    CHECK(at_fault("blade-fuse-32-v", {1, 4}) == Answer::no);  // 43.4 V
    // Behind the joint of the strings it is fed by all of them, its own too.
    const Opening joined = opens(
        strings_of({1, 4}), bench_device("gpv-fuse-10x38", "protects a string"), Occasion::fault);
    CHECK(joined.answer == Answer::no);
    CHECK(joined.obstacle == Obstacle::no_place);
}

// Source: IEC 60269-6: a fuse for PV clears its volts; common practice, no source: what is no fuse,
// does not clear the volts, stands behind the joint or breaks one way only protects no string.
TEST_CASE("string protection opens by current, clears its voltage and is in the string") {
    const Circuit strings = strings_of({2, 3}, Carried::string);
    CHECK(string_protection_a(strings, protecting("gpv-fuse-10x38")) == 15.0);
    CHECK(string_protection_a(strings, protecting("gpv-fuse-10x38", "bench")) == 15.0);
    CHECK(string_protection_a(strings, protecting("dc-breaker-non-polarised-2-pole")) == 32.0);
    CHECK(string_protection_a(strings, protecting("pv-switch-fuses-600-v")) == 32.0);
    for (const char* id :
         {"blade-fuse-32-v", "dc-breaker-polarised-2-pole", "pv-isolator-2-pole", "shorting-switch",
          "dc-contactor-sealed-450-v", "functional-earth-fuse-1-a", "surge-protector-dc-type-2",
          "ac-breaker-48-v-dc-listed", "panel-meter-dc", "insulation-monitor-1000-v"}) {
        CAPTURE(std::string(id));
        CHECK_FALSE(string_protection_a(strings, protecting(id)));
    }
    CHECK_FALSE(string_protection_a(strings_of({2, 3}), protecting("gpv-fuse-10x38", "bench")));
    CHECK_FALSE(string_protection_a(strings, bench_device("gpv-fuse-10x38", "breaks dc")));
    PlacedDevice unprinted = protecting("gpv-fuse-10x38");
    unprinted.control.dc_ratings.clear();
    CHECK_FALSE(string_protection_a(strings, unprinted));
    // A link melts in either direction: its polarity does not matter.
    PlacedDevice link = protecting("gpv-fuse-10x38");
    link.control.polarised = true;
    CHECK(string_protection_a(strings, link) == 15.0);
}

TEST_CASE("the other strings can feed reverse current into one of several") {
    for (const char* duty : {"breaks dc", "protects a string"}) {
        const auto fed = [duty](const Circuit& circuit, std::string_view run = "bench") {
            return may_be_fed_backwards(circuit, bench_device("pv-isolator-2-pole", duty, 2, run));
        };
        CAPTURE(std::string(duty));
        CHECK(fed(strings_of({1, 2}, Carried::string)));
        CHECK_FALSE(fed(strings_of({2, 1}, Carried::string)));
        CHECK_FALSE(fed(strings_of({1, 2})));
        CHECK_FALSE(fed(strings_of({1, 2}, Carried::bank)));
        // In no run that is listed: what protects a string stands in one all the same.
        CHECK(fed(strings_of({1, 2}), "") == (std::string_view(duty) == "protects a string"));
    }
    CHECK(in_a_string(strings_of({4, 1}), protecting("gpv-fuse-10x38", "bench")));
    CHECK_FALSE(in_a_string(strings_of({1, 2}), protecting("gpv-fuse-10x38", "bench")));
}
