#include "demo.hpp"

#include <doctest/doctest.h>

#include "heatmatch/match/circuit/opening.hpp"
#include "heatmatch/match/circuit/opens.hpp"

using heatmatch::Answer;
using heatmatch::Circuit;
using heatmatch::Obstacle;
using heatmatch::Occasion;
using heatmatch::Opening;
using heatmatch::opening_load;
using heatmatch::opening_site;
using heatmatch::PlacedDevice;

namespace {

/// Panels of 60 cells: 43.4 V at -20 °C, 8.66 A a string.
Circuit panels_in(heatmatch::Hookup panels) {
    Circuit circuit = bench_circuit("silicon-60-cell-245", panels, "tubular-1000-120", {1, 1});
    circuit.runs = {bench_run("thhn-12-awg", 30.0)};
    return circuit;
}

}  // namespace

TEST_CASE("a device breaks the cold voltage and 1.25 times the short-circuit current") {
    const PlacedDevice isolator = bench_device("pv-isolator-2-pole", "breaks dc", 2);
    const Opening one = opens(panels_in({2, 1}), isolator, Occasion::by_hand);
    CHECK(one.volts == doctest::Approx(2.0 * 37.53 * (1.0 + 0.00347 * 45.0)));
    CHECK(one.amperes == doctest::Approx(1.25 * 8.66));
    CHECK(one.breaker == "pv-isolator-2-pole");
    const Opening bright = opens(panels_in({2, 1}), isolator, Occasion::by_hand,
                                 {.irradiance_w_m2 = 1500.0});  // 16.2 A, above 16 A
    CHECK(bright.amperes == doctest::Approx(1.5 * 1.25 * 8.66));
    CHECK(bright.answer == Answer::no);
    CHECK(bright.obstacle == Obstacle::rating);
}

TEST_CASE("in the run of a string, or for a string, it breaks the current of one string") {
    Circuit circuit = panels_in({1, 3});
    const PlacedDevice isolator = bench_device("pv-isolator-2-pole", "breaks dc", 2);
    CHECK(opening_load(circuit, isolator).amperes == doctest::Approx(3.0 * 1.25 * 8.66));
    const PlacedDevice fuse = bench_device("gpv-fuse-10x38", "protects a string", 1, "");
    CHECK(opening_load(circuit, fuse).amperes == doctest::Approx(1.25 * 8.66));
    circuit.runs.front().run.carries = heatmatch::Carried::string;
    CHECK(opening_load(circuit, isolator).amperes == doctest::Approx(1.25 * 8.66));
}

// Source: sheets of such parts often say 30 V and 1 A; common practice, no source.
TEST_CASE("without a printed pair 30 V and 1 A are assumed, and AC ratings do not count") {
    PlacedDevice bare = bench_device("pv-isolator-2-pole", "breaks dc", 2);
    bare.control.dc_ratings.clear();
    CHECK(opening_load(panels_in({1, 1}), bare).unrated);
    CHECK(opening_load(panels_in({1, 1}), bare).rated_v == 30.0);
    bare.control.ac_only = true;
    CHECK(opening_load(panels_in({1, 1}), bare).rated_v == 0.0);
}

TEST_CASE("a site not stated as grounded floats, and its highest irradiance counts") {
    CHECK(opening_site({}).floating);
    CHECK(opening_site({.earthing = heatmatch::Earthing::floating}).floating);
    CHECK_FALSE(opening_site({.earthing = heatmatch::Earthing::grounded}).floating);
    CHECK(opening_site({.bright_irradiance_w_m2 = 1250.0}).irradiance_w_m2 == 1250.0);
}

TEST_CASE("the run of a device is found by its name") {
    const Circuit circuit = panels_in({1, 1});
    CHECK(run_of(circuit, bench_device("pv-isolator-2-pole", "breaks dc")) ==
          &circuit.runs.front());
    CHECK(run_of(circuit, bench_device("pv-isolator-2-pole", "breaks dc", 2, "")) == nullptr);
}
