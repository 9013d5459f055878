#include "demo.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "heatmatch/match/margins/run_ampacity.hpp"
#include "heatmatch/match/margins/run_margins.hpp"

using heatmatch::Circuit;
using heatmatch::LayingMethod;
using heatmatch::Margin;
using heatmatch::run_ampacity;
using heatmatch::RunAmpacity;
using heatmatch::RunParts;
using heatmatch::Severity;
using heatmatch::Site;
using heatmatch::WiringCode;

namespace {

/// Two panels of 8.66 A, a run and a tail behind it, so that the run is not the one at the element.
Circuit run_with_tail(const RunParts& run, heatmatch::Hookup panels = {2, 1}) {
    Circuit circuit = bench_circuit("silicon-60-cell-245", panels, "tubular-1000-120", {1, 1});
    circuit.runs = {run, bench_run("silicone-14-awg", 60.0)};
    circuit.runs.back().run.name = "tail";
    circuit.runs.back().run.carries = heatmatch::Carried::bank;
    return circuit;
}

Site site_by_code(std::optional<WiringCode> code, bool wet = false) {
    return {.record_low_c = -20.0, .wet = wet, .code = code};
}

RunAmpacity run_figure(const RunParts& run, std::optional<WiringCode> code = WiringCode::nec) {
    const Circuit circuit = run_with_tail(run);
    return run_ampacity(circuit, circuit.runs.front(), site_by_code(code));
}

/// A run whose joints are made for warm places: terminals do not count.
RunParts joined_run(std::string_view wire, std::optional<double> air_c, std::string_view kind) {
    RunParts run = bench_run(wire, air_c, kind);
    run.connector = heatmatch::find_connector(starter(), "pv-plug-4-mm");
    return run;
}

Margin run_current_of(const RunParts& run, std::optional<WiringCode> code = WiringCode::nec,
                      heatmatch::Hookup panels = {2, 1}) {
    return margin_of(run_margins(run_with_tail(run, panels), site_by_code(code)), "run current",
                     "\"bench\"");
}

}  // namespace

// Source: NEC 2023, Tables 310.16 and 310.17, 10 AWG at 90 °C: 40 A in conduit, 55 A in free air.
TEST_CASE("a wire in conduit has the current of a wire in conduit") {
    RunParts run = joined_run("pv-wire-10-awg", 30.0, "conduit");
    CHECK(run_figure(run).method == LayingMethod::raceway);
    CHECK(*run_figure(run).table_a == 40.0);
    CHECK(*run_figure(run).corrected_a == 40.0);
    run = joined_run("pv-wire-10-awg", 30.0, "open air");
    CHECK(run_figure(run).method == LayingMethod::bundle);
    CHECK(*run_figure(run).table_a == 40.0);
    run.run.surroundings.loaded_conductors = 1;
    CHECK(run_figure(run).method == LayingMethod::free_air);
    CHECK(*run_figure(run).table_a == 55.0);
    run.run.surroundings.metal_raceway = true;
    CHECK(*run_figure(run).table_a == 40.0);
}

// Source: NEC 2023, Table 310.15(C)(1): 31 to 40 conductors leave 40 %.
TEST_CASE("wires that lie together have a lower ampacity, and a sentence reports it") {
    RunParts run = joined_run("pv-wire-10-awg", 30.0, "conduit");
    run.run.surroundings.loaded_conductors = 36;
    CHECK(*run_figure(run).table_a == 40.0);
    CHECK(*run_figure(run).corrected_a == doctest::Approx(16.0));
    const Margin margin = run_current_of(run);
    CHECK(*margin.limit == doctest::Approx(16.0));
    CHECK(contains(margin.sentence(), "36 conductors together"));
    run.run.surroundings.kind = heatmatch::SurroundingsKind::open_air;
    CHECK(*run_figure(run).corrected_a == doctest::Approx(16.0));
    // B.52.17 ends at twenty circuits: what is not published is not judged.
    run.run.surroundings.loaded_conductors = 60;
    CHECK_FALSE(run_figure(run, WiringCode::iec).whole);
    CHECK(run_current_of(run, WiringCode::iec).severity == Severity::not_assessed);
}

// Source: NEC 110.14(C)(1)(a), Table 310.16: 12 AWG at 60 °C 20 A, at 90 °C 30 A.
TEST_CASE("terminals of equipment count as 60 °C, plugs and the end at an element do not") {
    RunParts run = bench_run("thhn-12-awg", 30.0, "conduit");
    CHECK(*run_figure(run).table_a == 20.0);
    CHECK(run_figure(run).terminals);
    CHECK(contains(run_current_of(run).sentence(), "terminals"));
    CHECK(*run_figure(joined_run("thhn-12-awg", 30.0, "conduit")).table_a == 30.0);
    run.connector = heatmatch::find_connector(starter(), "ring-terminal-vinyl");
    CHECK(*run_figure(run).table_a == 20.0);
    run.connector = heatmatch::find_connector(starter(), "ceramic-block-brass");
    CHECK(*run_figure(run).table_a == 30.0);
    Circuit circuit = run_with_tail(run);
    circuit.devices = {bench_device("pv-isolator-2-pole", "breaks dc", 2)};
    CHECK(*run_ampacity(circuit, circuit.runs[0], site_by_code(WiringCode::nec)).table_a == 20.0);
    CHECK_FALSE(run_ampacity(circuit, circuit.runs[1], site_by_code(WiringCode::nec)).terminals);
    // IEC has no such rule: 2.5 mm2, the size below 12 AWG, has 31 A in a pipe at 90 °C.
    run = bench_run("thhn-12-awg", 30.0, "conduit");
    run.wire->ampacity_a.reset();
    CHECK(*run_figure(run, WiringCode::iec).table_a == 31.0);
    // Cables of the 60 °C column keep it whatever joins them.
    CHECK(*run_figure(joined_run("nm-b-12-awg", 30.0, "cavity")).table_a == 20.0);
}

// Source: NEC 110.14(C)(1)(a)(3), Table 310.16: 12 AWG at 75 °C 25 A; 2/0 AWG at 60 °C 145 A, at
// 75 °C 175 A.
TEST_CASE("terminals of a device count as marked, and as 60 °C without a mark") {
    const auto figure = [](const char* wire, std::optional<double> marked_c,
                           const char* joint = "pv-plug-4-mm", double area_mm2 = 0.0) {
        RunParts run = bench_run(wire, 30.0, "conduit");
        run.connector = heatmatch::find_connector(starter(), joint);
        if (area_mm2 > 0.0) run.wire->area_mm2 = area_mm2;
        run.wire->ampacity_a.reset();
        Circuit circuit = run_with_tail(run);
        circuit.devices = {bench_device("pv-isolator-2-pole", "breaks dc", 2)};
        circuit.devices.front().control.terminal_limit_c = marked_c;
        return run_ampacity(circuit, circuit.runs.front(), site_by_code(WiringCode::nec));
    };
    CHECK(*figure("thhn-12-awg", std::nullopt).table_a == 20.0);
    CHECK(figure("thhn-12-awg", std::nullopt).unmarked);
    CHECK(*figure("thhn-12-awg", 60.0).table_a == 20.0);
    CHECK_FALSE(figure("thhn-12-awg", 60.0).unmarked);
    CHECK(*figure("thhn-12-awg", 75.0).table_a == 25.0);
    CHECK(*figure("thhn-12-awg", 90.0).table_a == 25.0);
    // Its mark does not help joints that count as 60 °C themselves.
    CHECK(*figure("thhn-12-awg", 75.0, "ring-terminal-vinyl").table_a == 20.0);
    CHECK_FALSE(figure("thhn-12-awg", std::nullopt, "ring-terminal-vinyl").unmarked);
    // Below the coolest column by the rise that is left: 20 A x sqrt(15/30).
    CHECK(*figure("thhn-12-awg", 45.0).table_a == doctest::Approx(20.0 * std::sqrt(0.5)));
    CHECK(*figure("thhn-12-awg", 25.0).table_a == 0.0);
    constexpr double two_aught_mm2 = 67.4;
    CHECK(*figure("thhn-8-awg", std::nullopt, "pv-plug-4-mm", two_aught_mm2).table_a == 145.0);
    CHECK(*figure("thhn-8-awg", 75.0, "pv-plug-4-mm", two_aught_mm2).table_a == 175.0);
}

// Source: NEC 310.15(B)(2): 33 °C more, 63 °C counts as the row to 65 °C, 0.65.
TEST_CASE("a raceway close above a sunlit roof counts as hotter") {
    RunParts run = joined_run("thhn-12-awg", 30.0, "conduit");
    run.run.surroundings.roof_distance_mm = 10.0;
    CHECK(*run_figure(run).corrected_a == doctest::Approx(30.0 * 0.65));
    CHECK(contains(run_current_of(run).sentence(), "above a roof"));
    run.run.surroundings.roof_distance_mm = 300.0;
    CHECK(*run_figure(run).corrected_a == 30.0);
    run = joined_run("xhhw-2-10-awg", 30.0, "conduit");
    run.run.surroundings.roof_distance_mm = 0.0;
    CHECK(*run_figure(run).corrected_a == 40.0);
}

// Source: NEC 2023, Table 310.18 and the rows for 150 °C of 310.15(B)(1)(2): 34 A, at 120 °C 0.52.
TEST_CASE("high-temperature wires are assessed from the base of their own tables") {
    RunParts run = joined_run("silicone-14-awg", 120.0, "conduit");
    CHECK(*run_figure(run).table_a == 34.0);
    CHECK(*run_figure(run).corrected_a == doctest::Approx(34.0 * 0.52));
    // Nickel plate: 0.87 of the 36 A for plain copper at 200 °C.
    CHECK(*run_figure(joined_run("silicone-nickel-14-awg", 40.0, "conduit")).table_a ==
          doctest::Approx(0.87 * 36.0));
    // IEC has nothing for 180 °C insulation in such air: not the figure of a cooler one.
    CHECK_FALSE(run_figure(run, WiringCode::iec).table_a);
    check_not_assessed(run_current_of(run, WiringCode::iec), "ampacity_a");
    check_not_assessed(run_current_of(run, std::nullopt), "site.code");
}

// Source: EN 50618, two that touch, 4 mm2: 44 A at 60 °C; 90 °C for years.
TEST_CASE("PV cable is limited to its insulation limit for years") {
    const RunParts run = joined_run("pv-cable-4-mm2", 50.0, "sunlit");
    CHECK(*run_figure(run, WiringCode::iec).table_a == 44.0);
    CHECK(*run_figure(run, WiringCode::iec).corrected_a ==
          doctest::Approx(44.0 * std::sqrt(40.0 / 60.0)));
}

TEST_CASE("an unstated code leaves the smaller current of the two, never more than either") {
    for (const char* wire : {"thhn-12-awg", "pv-wire-10-awg", "pv-cable-4-mm2", "h07v-k-4-mm2"}) {
        for (const char* kind : {"open air", "conduit", "cavity", "buried", "sunlit"}) {
            for (double air_c : {10.0, 35.0, 62.0}) {
                const RunParts run = joined_run(wire, air_c, kind);
                const auto both = run_figure(run, std::nullopt);
                const auto nec = run_figure(run, WiringCode::nec);
                const auto iec = run_figure(run, WiringCode::iec);
                if (!nec.whole || !iec.whole) {
                    CHECK_FALSE(both.whole);
                    continue;
                }
                CHECK(*both.table_a == std::min(*nec.table_a, *iec.table_a));
                CHECK(*both.corrected_a == std::min(*nec.corrected_a, *iec.corrected_a));
            }
        }
    }
}

// Source: the rule that unknown facts never improve a verdict.
TEST_CASE("without its air a run is not assessed, and still fails where the table does") {
    const RunParts run = joined_run("thhn-12-awg", std::nullopt, "conduit");
    check_not_assessed(run_current_of(run), "surroundings.air_c");
    CHECK(run_current_of(run, WiringCode::nec, {1, 3}).severity == Severity::warning);
    const RunParts in_bed = bench_run("thhn-12-awg", std::nullopt, "bed");
    CHECK(run_current_of(in_bed).severity == Severity::not_assessed);
    CHECK_FALSE(run_current_of(in_bed).missing.empty());
    // 40 A is the highest ampacity of a 12 AWG wire of 90 °C, and 54 A are required.
    CHECK(run_current_of(in_bed, WiringCode::nec, {1, 4}).severity == Severity::warning);
}

TEST_CASE("a wire's own ampacity applies to its stated installation method, and to no better one") {
    RunParts run = joined_run("mica-glass-14-awg", 60.0, "conduit");
    CHECK(*run_figure(run).table_a == *run.wire->ampacity_a);
    run.wire->ampacity_method = LayingMethod::free_air;
    CHECK_FALSE(run_figure(run).table_a);
    run.wire->ampacity_method.reset();
    check_not_assessed(run_current_of(run), "ampacity_a");
    CHECK(run_current_of(run, WiringCode::nec, {1, 6}).severity == Severity::warning);
}

TEST_CASE("hotter air and more company never leave more") {
    for (const auto code : {WiringCode::nec, WiringCode::iec}) {
        for (const char* kind : {"open air", "conduit", "cavity", "buried"}) {
            double before = 1e9;
            for (double air_c = -10.0; air_c <= 100.0; air_c += 1.0) {
                const double now = run_figure(joined_run("thhn-12-awg", air_c, kind), code)
                                       .corrected_a.value_or(0.0);
                CHECK(now <= before);
                before = now;
            }
            RunParts run = joined_run("thhn-12-awg", 30.0, kind);
            before = 1e9;
            for (int loaded = 1; loaded <= 100; ++loaded) {
                run.run.surroundings.loaded_conductors = loaded;
                const double now = run_figure(run, code).corrected_a.value_or(0.0);
                CHECK(now <= before);
                before = now;
            }
        }
    }
}
