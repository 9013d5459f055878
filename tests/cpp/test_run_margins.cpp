#include "demo.hpp"

#include <doctest/doctest.h>

#include "heatmatch/heat/wire_temperature.hpp"
#include "heatmatch/match/margins/run_margins.hpp"

using heatmatch::Circuit;
using heatmatch::Margin;
using heatmatch::run_margins;
using heatmatch::RunParts;
using heatmatch::Severity;

namespace {

/// Two panels of 8.66 A in series, 86.8 V at -20 °C, and one run.
Circuit circuit_with_run(RunParts run, heatmatch::Hookup panels = {2, 1}) {
    Circuit circuit = bench_circuit("silicon-60-cell-245", panels, "tubular-1000-120", {1, 1});
    circuit.runs = {std::move(run)};
    return circuit;
}

std::vector<Margin> run_margins_of(const Circuit& circuit, bool wet = false, double sun = 1000.0) {
    return run_margins(circuit, {.record_low_c = -20.0,
                                 .wet = wet,
                                 .bright_irradiance_w_m2 = sun,
                                 .code = heatmatch::WiringCode::nec});
}

Margin run_margin(const Circuit& circuit, std::string_view name, bool wet = false) {
    return margin_of(run_margins_of(circuit, wet), name);
}

double conductor_c(const RunParts& run, double current_a) {
    return heatmatch::conductor_temperature(*run.wire, run.insulation ? &*run.insulation : nullptr,
                                            current_a, run.run.surroundings)
        ->conductor_c;
}

constexpr double cold_v = 2.0 * 37.53 * (1.0 + 0.00347 * 45.0);

}  // namespace

// Source: arithmetic on the label.
TEST_CASE("a wire and its joint are held against the cold voltage") {
    RunParts run = bench_run("thhn-12-awg", 30.0);
    check_judged(run_margin(circuit_with_run(run), "cold voltage"), Severity::none, cold_v, 600.0);
    run.wire->voltage_rating_v = 60.0;
    check_judged(run_margin(circuit_with_run(run), "cold voltage"), Severity::danger, cold_v, 60.0);
    run.wire->voltage_rating_v.reset();
    check_not_assessed(run_margin(circuit_with_run(run), "cold voltage"), "voltage_rating_v");
    run = bench_run("thhn-12-awg", 30.0);
    run.connector = heatmatch::find_connector(starter(), "ring-terminal-vinyl");
    const auto volts = [&](Severity severity) {
        const auto margins = run_margins_of(circuit_with_run(run));
        return std::count_if(margins.begin(), margins.end(), [&](const Margin& margin) {
            return margin.unit == heatmatch::unit::volt && margin.severity == severity;
        });
    };
    CHECK(volts(Severity::none) == 2);
    run.connector->voltage_rating_v = 50.0;
    CHECK(volts(Severity::none) == 1);
    CHECK(volts(Severity::danger) == 1);
    run.connector->voltage_rating_v.reset();
    CHECK(volts(Severity::not_assessed) == 1);
}

// Source: NEC 690.8, from memory: the table carries 1.56 Isc, the corrected value 1.25 Isc. The
// wire has 30 A at 30 °C for 90 °C.
TEST_CASE("the code's current is the smaller of table and correction") {
    RunParts run = bench_run("thhn-12-awg", 30.0);
    const double needed = 1.25 * 8.66;
    const double in_table = 1.25 * needed;
    check_judged(run_margin(circuit_with_run(run), "run current"), Severity::none, in_table, 30.0);
    // At 70 °C 0.58 x 30 A = 17.4 A.
    run = bench_run("thhn-12-awg", 70.0);
    check_judged(run_margin(circuit_with_run(run), "run current"), Severity::none, needed,
                 30.0 * 0.58);
    CHECK(contains(run_margin(circuit_with_run(run), "run current").sentence(), "corrected"));
    // At 84 °C 0.29 x 30 A = 8.7 A.
    run = bench_run("thhn-12-awg", 84.0);
    check_judged(run_margin(circuit_with_run(run), "run current"), Severity::warning, needed,
                 30.0 * 0.29);
    // Three strings: the table must show 40.6 A and shows 30 A.
    run = bench_run("thhn-12-awg", 30.0);
    check_judged(run_margin(circuit_with_run(run, {1, 3}), "run current"), Severity::warning,
                 3.0 * in_table, 30.0);
    run.run.carries = heatmatch::Carried::string;
    check_judged(run_margin(circuit_with_run(run, {1, 3}), "run current"), Severity::none, in_table,
                 30.0);
}

TEST_CASE("above its table's conductor temperature a wire allows no current there") {
    const Margin margin =
        run_margin(circuit_with_run(bench_run("thhn-12-awg", 150.0)), "run current");
    CHECK(margin.severity == Severity::warning);
    CHECK(*margin.headroom < 0.0);
    CHECK(contains(margin.sentence(), "allows no current there"));
    check_sentence(margin);
}

TEST_CASE("without a table value the code's current is not assessed") {
    RunParts run = bench_run("thhn-12-awg", 30.0);
    run.wire->ampacity_a.reset();
    CHECK(run_margin(circuit_with_run(run), "run current").severity == Severity::none);
    run.wire->conductor = heatmatch::ConductorMetal::aluminium;
    check_not_assessed(run_margin(circuit_with_run(run), "run current"), "ampacity_a");
}

// Source: the temperatures are those of conductor_temperature(), tested for itself.
TEST_CASE("insulation above its limit is a danger, plating above its own a warning") {
    RunParts run = bench_run("silicone-14-awg", 120.0);
    double at = conductor_c(run, 8.66);
    check_judged(run_margin(circuit_with_run(run), "insulation"), Severity::none, at, 180.0,
                 heatmatch::room_c);
    check_judged(run_margin(circuit_with_run(run), "plating"), Severity::none, at, 150.0,
                 heatmatch::room_c);
    run = bench_run("silicone-14-awg", 200.0);
    CHECK(run_margin(circuit_with_run(run), "insulation").severity == Severity::danger);
    CHECK(*run_margin(circuit_with_run(run), "insulation").headroom < 0.0);
    CHECK(run_margin(circuit_with_run(run), "plating").severity == Severity::warning);
    check_sentence(run_margin(circuit_with_run(run), "insulation"));
    // 100 A in cool air overheats it by its own current.
    run = bench_run("silicone-14-awg", 25.0);
    Circuit loaded = circuit_with_run(run);
    loaded.panel.i_sc_limit_a = 100.0;
    at = conductor_c(run, 100.0);
    CHECK(at > 180.0);
    check_judged(run_margin(loaded, "insulation"), Severity::danger, at, 180.0, heatmatch::room_c);
}

TEST_CASE("an unknown insulation or unknown surroundings are reported") {
    RunParts run = bench_run("silicone-14-awg", std::nullopt);
    for (const char* name : {"insulation", "plating"}) {
        check_not_assessed(run_margin(circuit_with_run(run), name), "surroundings.air_c");
    }
    // In a cavity the hot bound is assessed, and reported as one.
    run = bench_run("silicone-14-awg", 60.0, "cavity");
    const Margin cavity = run_margin(circuit_with_run(run), "insulation");
    CHECK(*cavity.value >
          *run_margin(circuit_with_run(bench_run("silicone-14-awg", 60.0)), "insulation").value);
    REQUIRE_FALSE(cavity.assumed.empty());
    CHECK(contains(cavity.assumed.back().field, "cavity"));
    run = bench_run("silicone-14-awg", 60.0);
    run.insulation.reset();
    check_not_assessed(run_margin(circuit_with_run(run), "insulation"), "insulation");
    CHECK(run_margin(circuit_with_run(run), "plating").severity == Severity::none);
}

TEST_CASE("a joint is assessed with the wire's temperature, or reported as unknown") {
    RunParts run = bench_run("silicone-14-awg", 120.0);
    check_not_assessed(run_margin(circuit_with_run(run), "joint"), "connector");
    run.connector = heatmatch::find_connector(starter(), "ring-terminal-nickel");
    check_judged(run_margin(circuit_with_run(run), "joint"), Severity::none, conductor_c(run, 8.66),
                 482.0, heatmatch::room_c);
    run.connector = heatmatch::find_connector(starter(), "ring-terminal-vinyl");
    CHECK(run_margin(circuit_with_run(run), "joint").severity == Severity::danger);
    run.connector = heatmatch::find_connector(starter(), "solder-joint");
    CHECK(run_margin(circuit_with_run(run), "joint").severity == Severity::danger);
}

// Source: the starter's connector, rated 10 A, with 3 x 8.66 A through it.
TEST_CASE("a joint above its rated current is reported") {
    RunParts run = bench_run("pv-wire-8-awg", 30.0);
    run.connector = heatmatch::find_connector(starter(), "twist-on-plastic");
    REQUIRE(*run.connector->current_rating_a == 10.0);
    const auto margins = run_margins_of(circuit_with_run(run, {1, 3}));
    CHECK(std::any_of(margins.begin(), margins.end(), [](const Margin& margin) {
        return margin.unit == heatmatch::unit::ampere && margin.limit.value_or(0.0) == 10.0 &&
               (margin.severity == Severity::warning || margin.severity == Severity::danger);
    }));
}

// Source: common practice, no source: 10 to 20 K are kept to the limit of an insulation.
TEST_CASE("a wire two kelvin below its limit is at least a caution") {
    RunParts run = bench_run("pvc-105-14-awg", 100.0);
    const Circuit circuit = circuit_with_run(run);
    REQUIRE(*run_margin(circuit, "insulation").value > 101.0);
    REQUIRE(*run_margin(circuit, "insulation").value < 105.0);
    CHECK(run_margin(circuit, "insulation").severity == Severity::caution);
}

// Source: the margins of a run are the same ones whatever is known of it.
TEST_CASE("sun counts in a sunlit run only, with the print on the jacket") {
    RunParts run = bench_run("thhn-12-awg", 35.0, "sunlit");
    CHECK(run_margin(circuit_with_run(run), "sunlight").severity == Severity::warning);
    run.wire->sunlight_resistant = true;
    CHECK(run_margin(circuit_with_run(run), "sunlight").severity == Severity::none);
    run.wire->sunlight_resistant.reset();
    check_not_assessed(run_margin(circuit_with_run(run), "sunlight"), "sunlight_resistant");
    run = bench_run("thhn-12-awg", 35.0);
    CHECK(run_margin(circuit_with_run(run), "sunlight").severity == Severity::none);
    CHECK(contains(run_margin(circuit_with_run(run), "sunlight").sentence(), "out of the sun"));
}

TEST_CASE("in a wet place insulation needs a wet rating, in a hot bed it does not") {
    RunParts run = bench_run("nm-b-12-awg", 20.0);
    CHECK(run_margin(circuit_with_run(run), "wet place", false).severity == Severity::none);
    CHECK(run_margin(circuit_with_run(run), "wet place", true).severity == Severity::warning);
    CHECK(
        run_margin(circuit_with_run(bench_run("thhn-12-awg", 20.0)), "wet place", true).severity ==
        Severity::none);
    run = bench_run("silicone-14-awg", 60.0, "bed");
    CHECK(run_margin(circuit_with_run(run), "wet place", true).severity == Severity::none);
    CHECK(contains(run_margin(circuit_with_run(run), "wet place", true).sentence(), "in the bed"));
    // The inside of a raceway in the ground counts as wet (NEC 300.5).
    run = bench_run("nm-b-12-awg", 20.0, "buried");
    CHECK(run_margin(circuit_with_run(run), "wet place", false).severity == Severity::warning);
    run.insulation.reset();
    check_not_assessed(run_margin(circuit_with_run(run), "wet place"), "insulation");
}

// Source: NEC Table 310.4(A), from memory: in a wet place the wet rating of the insulation holds;
// the starter has 60 °C wet and 90 °C dry for this one.
TEST_CASE("in a wet place insulation is held against its wet limit") {
    RunParts run = bench_run("uf-b-10-awg", 70.0, "conduit");
    REQUIRE(*run.insulation->limit_wet_c == 60.0);
    CHECK(run_margin(circuit_with_run(run), "insulation", false).severity == Severity::none);
    CHECK(*run_margin(circuit_with_run(run), "insulation", true).limit == 60.0);
    CHECK(run_margin(circuit_with_run(run), "insulation", true).severity == Severity::danger);
}

// Source: arithmetic, 1.25 x 1.25 (NEC 690.8) of the label's short-circuit current.
TEST_CASE("brighter sun than full heats the wire, the code counts full sun") {
    const RunParts run = bench_run("thhn-12-awg", 30.0);
    const Circuit circuit = circuit_with_run(run);
    const auto bright = run_margins_of(circuit, false, 1300.0);
    CHECK(*margin_of(bright, "insulation").value ==
          doctest::Approx(conductor_c(run, 1.3 * 8.66)).epsilon(1e-9));
    CHECK(*margin_of(bright, "run current").value == doctest::Approx(1.5625 * 8.66));
}

TEST_CASE("each run has its own margins, with its name in the subject") {
    Circuit circuit = circuit_with_run(bench_run("thhn-12-awg", 30.0));
    circuit.runs.push_back(bench_run("silicone-14-awg", 120.0));
    circuit.runs.back().run.name = "tail";
    const auto margins = run_margins_of(circuit);
    for (const char* name : {"cold voltage", "run current", "insulation", "plating", "joint"}) {
        CHECK(count_margins(margins, name, "\"bench\"") == 1);
        CHECK(count_margins(margins, name, "\"tail\"") == 1);
    }
    for (const Margin& margin : margins) check_sentence(margin);
}

TEST_CASE("a run without a wire names everything that could not be judged") {
    RunParts run = bench_run("thhn-12-awg", 30.0);
    run.wire.reset();
    run.insulation.reset();
    const auto margins = run_margins_of(circuit_with_run(run));
    for (const char* name :
         {"cold voltage", "joint voltage", "joint current", "run current", "insulation", "plating",
          "joint", "sunlight", "wet place", "placing"}) {
        CAPTURE(std::string(name));
        CHECK(count_margins(margins, name) == 1);
        if (count_margins(margins, name) == 1) check_not_assessed(margin_of(margins, name), "wire");
    }
}

TEST_CASE("no two margins of one run have both name and subject in common") {
    RunParts run = bench_run("thhn-12-awg", 30.0);
    run.connector = heatmatch::find_connector(starter(), "ring-terminal-vinyl");
    const auto margins = run_margins_of(circuit_with_run(run));
    for (const Margin& margin : margins) {
        CAPTURE(margin.name);
        CHECK(count_margins(margins, margin.name, margin.subject) == 1);
    }
}

TEST_CASE("a run has the same margins in the same order whatever is known of it") {
    const auto run_names_of = [](const RunParts& run, bool wet) {
        std::vector<std::string> names;
        for (const Margin& margin : run_margins_of(circuit_with_run(run), wet))
            names.push_back(margin.name);
        return names;
    };
    const std::vector<std::string> whole = run_names_of(bench_run("thhn-12-awg", 30.0), false);
    for (const char* kind : {"open air", "sunlit", "conduit", "bed", "cavity", "buried"}) {
        CAPTURE(std::string(kind));
        CHECK(run_names_of(bench_run("thhn-12-awg", 30.0, kind), false) == whole);
        CHECK(run_names_of(bench_run("thhn-12-awg", std::nullopt, kind), true) == whole);
    }
    RunParts bare = bench_run("thhn-12-awg", std::nullopt);
    bare.insulation.reset();
    CHECK(run_names_of(bare, true) == whole);
    bare.connector = heatmatch::find_connector(starter(), "ring-terminal-vinyl");
    CHECK(run_names_of(bare, false) == whole);
    bare.wire.reset();
    CHECK(run_names_of(bare, false) == whole);
}
