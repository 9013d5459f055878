#include "demo.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "heatmatch/match/margins/run_margins.hpp"

using heatmatch::Circuit;
using heatmatch::Margin;
using heatmatch::Severity;

namespace {

/// Two panels of that kind in series, as new, at that sun and cell temperature.
heatmatch::ArrayCurve pair_of(const char* panel, double sun, double cell_c) {
    const auto fit = heatmatch::fit_single_diode(heatmatch::find_panel(starter(), panel));
    return heatmatch::Array::uniform(fit, 2, 1).at(sun, cell_c);
}

constexpr const char* older_panels[] = {"silicon-60-cell-220", "silicon-60-cell-245"};

/// The margin of that name for a run of that wire in surroundings of 150 °C, as a hot tail.
Margin at_150_c(const char* wire, std::string_view name) {
    Circuit circuit = bench_circuit("silicon-60-cell-245", {2, 1}, "tubular-1000-120", {1, 1});
    circuit.runs = {bench_run(wire, 150.0)};
    circuit.runs.front().run.carries = heatmatch::Carried::bank;
    return margin_of(heatmatch::run_margins(circuit, {.record_low_c = -20.0}), name);
}

}  // namespace

// Common practice, no source: Ohm's law at an ideal source. A panel below its knee is none.
TEST_CASE("a 15 ohm element absorbs 9.6 W at 12 V, 240 W at 60 V and 960 W at 120 V") {
    struct Case {
        double volts;
        double amperes;
        double watts;
    };
    for (const auto& [volts, amperes, watts] :
         {Case{12.0, 0.8, 9.6}, Case{60.0, 4.0, 240.0}, Case{120.0, 8.0, 960.0}}) {
        // A nearly ideal source: a diode so steep that its volts hardly fall with the current.
        const heatmatch::DiodeCurve source{.light_current_a = 1000.0,
                                           .ln_saturation_current = std::log(1000.0) - volts / 1e-6,
                                           .ideality_v = 1e-6};
        const auto point = source.into_resistance(15.0);
        CHECK(point.voltage_v == doctest::Approx(volts).epsilon(1e-5));
        CHECK(point.current_a == doctest::Approx(amperes).epsilon(1e-5));
        CHECK(point.power_w == doctest::Approx(watts).epsilon(1e-5));
        CHECK(watts < 1000.0);
    }
}

// Common practice, no source: a 1000 W element for 120 V "is 15 ohm".
TEST_CASE("a 1000 W element for 120 V is near 15 ohm within its tolerance") {
    const auto& element = heatmatch::find_element(starter(), "tubular-1000-120");
    CHECK(*element.rated_v == 120.0);
    CHECK(*element.rated_w == 1000.0);
    const auto ohms = heatmatch::element_resistance(element, nullptr, 300.0);
    CHECK(ohms.low_ohm < 15.0);
    CHECK(ohms.high_ohm > 15.0);
    CHECK(ohms.typical_ohm == doctest::Approx(15.0).epsilon(0.06));
}

// Common practice, no source: two older panels of 60 cells (205 to 260 W) in series into 15 ohm run
// at 57 to 62 V and 3.8 to 4.1 A in full sun; read to the last digit given.
TEST_CASE("two older 60-cell panels into 15 ohm run near 60 V and 4 A in full sun") {
    for (const char* panel : older_panels) {
        for (const double cell_c : {55.0, 60.0, 65.0}) {
            CAPTURE(std::string(panel));
            CAPTURE(cell_c);
            const auto point = pair_of(panel, 1000.0, cell_c).into_resistance(15.0);
            CHECK(point.voltage_v >= 56.5);
            CHECK(point.voltage_v <= 62.5);
            CHECK(point.current_a >= 3.75);
            CHECK(point.current_a <= 4.15);
        }
    }
}

// Common practice, no source: light cloud hardly matters to that pair. Against full sun on cells of
// 55 °C power stays within 3 %; against warmer cells cool cloud even gains.
TEST_CASE("the same pair keeps its power under light cloud") {
    for (const char* panel : older_panels) {
        CAPTURE(std::string(panel));
        const double cloud = pair_of(panel, 600.0, 35.0).into_resistance(15.0).power_w;
        const double sun = pair_of(panel, 1000.0, 55.0).into_resistance(15.0).power_w;
        CHECK(std::fabs(cloud / sun - 1.0) <= 0.03);
        for (const double cell_c : {60.0, 65.0}) {
            CHECK(cloud >= 0.97 * pair_of(panel, 1000.0, cell_c).into_resistance(15.0).power_w);
        }
    }
}

// Common practice, no source: a range coil of 27 to 46 ohm gives 60 to 37 % of that power. Within
// one point.
TEST_CASE("a range coil on the same pair gives 60 to 37 percent") {
    for (const char* panel : older_panels) {
        for (const double cell_c : {55.0, 60.0, 65.0}) {
            CAPTURE(std::string(panel));
            const auto curve = pair_of(panel, 1000.0, cell_c);
            const double fifteen = curve.into_resistance(15.0).power_w;
            CHECK(std::fabs(curve.into_resistance(27.0).power_w / fifteen - 0.60) <= 0.01);
            CHECK(std::fabs(curve.into_resistance(46.0).power_w / fifteen - 0.37) <= 0.01);
        }
    }
    // The starter's range coils lie in that span.
    int seen = 0;
    for (const auto& element : starter().elements) {
        if (element.family != "range coil") continue;
        const double ohm = *element.rated_v * *element.rated_v / *element.rated_w;
        CAPTURE(element.id);
        CHECK(ohm > 20.0);
        CHECK(ohm < 46.0);
        ++seen;
    }
    CHECK(seen >= 2);
}

// Common practice, no source: ordinary wire melts at a hot element. PVC withstands 60 to 105 °C.
TEST_CASE("ordinary PVC wire in surroundings of 150 °C is a danger") {
    for (const char* wire : {"pvc-105-14-awg", "thhn-14-awg", "thhn-12-awg", "nm-b-12-awg",
                             "h07v-k-2-5-mm2", "automotive-gpt-10-awg"}) {
        CAPTURE(std::string(wire));
        const Margin margin = at_150_c(wire, "insulation");
        CHECK(margin.severity == Severity::danger);
        CHECK(*margin.headroom < 0.0);
        CHECK(*margin.value > 150.0);
        CHECK(contains(margin.sentence(), "PVC"));
        CHECK(contains(margin.sentence(), "melts"));
    }
}

// Common practice, no source: silicone withstands 150 to 200 °C, tin ages above 150.
TEST_CASE("silicone wire withstands 150 °C, its tinned conductor ages") {
    const Margin insulation = at_150_c("silicone-14-awg", "insulation");
    CHECK(insulation.severity != Severity::danger);
    CHECK(*insulation.headroom > 0.0);
    const Margin plating = at_150_c("silicone-14-awg", "plating");
    CHECK(plating.severity == Severity::warning);
    CHECK(contains(plating.sentence(), "tin"));
    // With nickel on the strands it does not.
    CHECK(at_150_c("silicone-nickel-14-awg", "plating").severity != Severity::warning);
    CHECK(at_150_c("silicone-nickel-14-awg", "insulation").severity != Severity::danger);
}

// Common practice, no source: at 4 to 8 A the surroundings heat the tail, not the current.
TEST_CASE("a hot tail's own current adds a few kelvin only") {
    CHECK(*at_150_c("silicone-14-awg", "insulation").value < 155.0);
}

// Source: 36²/3 = 432 W is what Ohm's law promises at 36 V open circuit; a 245 W panel cannot.
TEST_CASE("a panel never gives the power of Ohm's law at its open-circuit voltage") {
    const auto& panel = heatmatch::find_panel(starter(), "silicon-60-cell-245");
    const auto stc = heatmatch::fit_single_diode(panel).at(1000.0, 25.0);
    CHECK(stc.into_resistance(3.0).power_w < 250.0);
    CHECK(stc.into_resistance(3.0).power_w < 0.6 * 36.0 * 36.0 / 3.0);
}

// Source: trade knowledge: below the match, heat falls with the square of the sun.
TEST_CASE("far below the knee half the sun is a quarter of the heat") {
    const double half = pair_of("silicon-60-cell-245", 100.0, 25.0).into_resistance(15.0).power_w;
    const double full = pair_of("silicon-60-cell-245", 200.0, 25.0).into_resistance(15.0).power_w;
    CHECK(half / full == doctest::Approx(0.25).epsilon(0.02));
}
