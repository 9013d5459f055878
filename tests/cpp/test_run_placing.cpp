#include "demo.hpp"

#include <doctest/doctest.h>

#include "heatmatch/match/candidate/wiring.hpp"
#include "heatmatch/match/margins/run_margins.hpp"

using heatmatch::Circuit;
using heatmatch::Margin;
using heatmatch::RunParts;
using heatmatch::Severity;
using heatmatch::Site;
using heatmatch::WiringCode;

namespace {

Margin placing_of(const RunParts& run, const Site& site = {.record_low_c = -20.0},
                  heatmatch::Hookup panels = {2, 1}) {
    Circuit circuit = bench_circuit("silicon-60-cell-245", panels, "tubular-1000-120", {1, 1});
    circuit.runs = {run, bench_run("silicone-14-awg", 60.0)};
    circuit.runs.back().run.name = "tail";
    circuit.runs.back().run.carries = heatmatch::Carried::bank;
    return margin_of(run_margins(circuit, site), "placing", "\"bench\"");
}

RunParts run_lying(std::string_view wire, std::string_view kind, std::optional<bool> inside) {
    RunParts run = bench_run(wire, 30.0, kind);
    run.run.inside = inside;
    return run;
}

}  // namespace

// Source: NEC 300.3(A), 400.12 (nec-300-3, nec-400-12); a listing guide (welding-cable-use).
TEST_CASE("a kind of wire is permitted according to its type letters") {
    const auto severity = [](std::string_view wire, std::string_view kind) {
        const Margin margin = placing_of(run_lying(wire, kind, false));
        CAPTURE(margin.sentence());
        check_sentence(margin);
        CHECK_FALSE(margin.source.empty());
        return margin.severity;
    };
    CHECK(severity("thhn-12-awg", "conduit") == Severity::none);
    CHECK(severity("thhn-12-awg", "open air") == Severity::warning);
    CHECK(severity("thhn-12-awg", "cavity") == Severity::warning);
    CHECK(severity("pv-wire-10-awg", "sunlit") == Severity::none);
    CHECK(severity("pv-wire-10-awg", "bed") == Severity::warning);
    CHECK(severity("nm-b-12-awg", "cavity") == Severity::none);
    CHECK(severity("nm-b-12-awg", "sunlit") == Severity::warning);
    CHECK(severity("silicone-14-awg", "open air") == Severity::warning);
    CHECK(severity("silicone-14-awg", "bed") == Severity::none);
    for (const char* kind : {"open air", "sunlit", "conduit", "cavity", "bed"}) {
        CHECK(severity("welding-cable-4-awg", kind) == Severity::warning);
        CHECK(severity("sjoow-12-awg", kind) == Severity::warning);
        CHECK(severity("automotive-gpt-10-awg", kind) == Severity::warning);
        CHECK(severity("mi-12-awg", kind) == Severity::none);
    }
}

// Source: NEC 310.10(E), 338.12(B) (nec-310-10, nec-338-12).
TEST_CASE("in the ground only marked wire is permitted") {
    CHECK(placing_of(run_lying("uf-b-10-awg", "buried", std::nullopt)).severity == Severity::none);
    CHECK(placing_of(run_lying("thhn-12-awg", "buried", false)).severity == Severity::warning);
    check_not_assessed(placing_of(run_lying("pv-wire-10-awg", "buried", false)), "direct_burial");
    RunParts service = run_lying("use-2-10-awg", "conduit", true);
    service.run.surroundings.metal_raceway = true;
    CHECK(placing_of(service).severity == Severity::none);
    service.wire->marking = "USE-2";
    CHECK(placing_of(service).severity == Severity::warning);
    service.run.inside.reset();
    check_not_assessed(placing_of(service), "run.inside");
    service.run.inside = false;
    CHECK(placing_of(service).severity == Severity::none);
}

// Source: NEC 690.31(D) (nec-690-31): above 30 V or 8 A inside in metal. Two panels stand at 86.8
// V.
TEST_CASE("inside a building a circuit of panels belongs in metal") {
    CHECK(placing_of(run_lying("thhn-12-awg", "conduit", true)).severity == Severity::not_assessed);
    RunParts run = run_lying("thhn-12-awg", "conduit", true);
    check_not_assessed(placing_of(run), "surroundings.metal_raceway");
    run.run.surroundings.metal_raceway = false;
    CHECK(placing_of(run).severity == Severity::warning);
    CHECK(contains(placing_of(run).sentence(), "30 V"));
    run.run.surroundings.metal_raceway = true;
    CHECK(placing_of(run).severity == Severity::none);
    CHECK(placing_of(run_lying("pv-wire-10-awg", "open air", true)).severity == Severity::warning);
    CHECK(placing_of(run_lying("pv-wire-10-awg", "open air", false)).severity == Severity::none);
    check_not_assessed(placing_of(run_lying("pv-wire-10-awg", "open air", std::nullopt)),
                       "run.inside");
    // IEC has no such rule; where no code is stated it counts.
    const Site iec{.record_low_c = -20.0, .code = WiringCode::iec};
    CHECK(placing_of(run_lying("pv-wire-10-awg", "open air", true), iec).severity ==
          Severity::none);
}

// Source: NEC 690.31(C)(1) (nec-690-31) names PV wire, and USE-2 that is RHW-2 too.
TEST_CASE("PV cable of the other standard is permitted by the code that lists it") {
    const RunParts run = run_lying("pv-cable-4-mm2", "sunlit", false);
    const auto by = [&run](std::optional<WiringCode> code) {
        return placing_of(run, {.record_low_c = -20.0, .code = code});
    };
    CHECK(by(WiringCode::iec).severity == Severity::none);
    CHECK(by(WiringCode::nec).severity == Severity::warning);
    check_not_assessed(by(std::nullopt), "site.code");
}

TEST_CASE("without type letters the permitted places are unknown") {
    RunParts run = run_lying("thhn-12-awg", "conduit", false);
    run.wire->marking.clear();
    check_not_assessed(placing_of(run), "marking");
}

// Source: welding-cable-use, nec-300-3: common places of a home run.
TEST_CASE("no wire is chosen that is not permitted there") {
    int chosen = 0;
    for (const char* kind : {"open air", "sunlit", "conduit", "cavity", "buried"}) {
        for (double length_m : {3.0, 9.0, 25.0}) {
            for (const heatmatch::Hookup panels :
                 {heatmatch::Hookup{2, 1}, heatmatch::Hookup{1, 2}, heatmatch::Hookup{1, 4},
                  heatmatch::Hookup{2, 3}}) {
                heatmatch::Installation installation;
                installation.site = {.record_low_c = -20.0};
                RunParts run = bench_run("thhn-12-awg", 35.0, kind);
                run.run.wire = "choose";
                run.run.length_m = length_m;
                RunParts tail = bench_run("silicone-14-awg", 60.0);
                tail.run.carries = heatmatch::Carried::bank;
                installation.runs = {run.run, tail.run};
                const Circuit circuit =
                    bench_circuit("silicon-60-cell-245", panels, "tubular-1000-120", {1, 1});
                const auto laid = heatmatch::lay_runs(starter(), installation, circuit);
                if (!laid.front().wire) continue;
                ++chosen;
                RunParts checked = laid.front();
                checked.run.inside = false;
                checked.run.surroundings.metal_raceway.reset();
                CAPTURE(checked.wire->id);
                CAPTURE(std::string(kind));
                CHECK(placing_of(checked).severity == Severity::none);
                CHECK(checked.wire->id != "welding-cable-4-awg");
            }
        }
    }
    CHECK(chosen >= 20);
}
