#include "demo.hpp"
#include "long_run.hpp"
#include "match/margins/insulation_limit.hpp"

#include <doctest/doctest.h>

#include "heatmatch/match/margins/run_margins.hpp"

using namespace heatmatch;

namespace {

/// One run, the last of its circuit.
Circuit circuit_of_run(RunParts run, Carried carries) {
    Circuit circuit = bench_circuit("silicon-60-cell-245", {2, 1}, "tubular-1000-120", {1, 1});
    run.run.carries = carries;
    circuit.runs = {std::move(run)};
    return circuit;
}

InsulationLimit limit_where(bool wet, const RunParts& run, Carried carries = Carried::array) {
    const Circuit circuit = circuit_of_run(run, carries);
    return insulation_limit(circuit, circuit.runs.front(), {.record_low_c = -20.0, .wet = wet});
}

Margin insulation_where(bool wet, const RunParts& run, Carried carries = Carried::array) {
    return margin_of(run_margins(circuit_of_run(run, carries), {.record_low_c = -20.0, .wet = wet}),
                     "insulation");
}

}  // namespace

// Source: NEC Table 310.4(A), from memory: a rating for dry places and one for wet ones; the
// starter has 60 °C wet and 90 °C dry for this one.
TEST_CASE("a wet place keeps its limit however hot its air is") {
    for (const double air_c : {20.0, 85.0, 95.0, 160.0}) {
        const RunParts run = bench_run("uf-b-10-awg", air_c, "conduit");
        CHECK(limit_where(false, run).limit_c == 90.0);
        CHECK(limit_where(true, run).limit_c == 60.0);
        CHECK(limit_where(true, run).soaked);
        // At an element too: it is soaked through before it is hot enough to dry.
        CHECK(limit_where(true, run, Carried::bank).limit_c == 60.0);
    }
    CHECK(insulation_where(true, bench_run("uf-b-10-awg", 95.0, "conduit")).severity ==
          Severity::danger);
}

// Common practice, no source: water leaves what is hotter than it boils. The starter has 90 °C wet
// and 180 °C dry for this silicone.
TEST_CASE(
    "at an element, insulation rated for the drying temperature is a caution beyond its "
    "wet limit") {
    const RunParts hot = bench_run("silicone-14-awg", 120.0);
    CHECK(limit_where(true, hot, Carried::bank).limit_c == 180.0);
    CHECK(*limit_where(true, hot, Carried::bank).wet_c == 90.0);
    CHECK_FALSE(limit_where(false, hot, Carried::bank).wet_c);
    const Margin dries = insulation_where(true, hot, Carried::bank);
    CHECK(dries.severity == Severity::caution);
    CHECK(contains(dries.sentence(), "keeps it dry"));
    check_sentence(dries);
    CHECK(insulation_where(true, bench_run("silicone-14-awg", 60.0), Carried::bank).severity ==
          Severity::none);
    CHECK(insulation_where(true, bench_run("silicone-14-awg", 200.0), Carried::bank).severity ==
          Severity::danger);
    // Away from an element nothing dries it, and in wet ground neither.
    CHECK(insulation_where(true, hot).severity == Severity::danger);
    CHECK(limit_where(false, bench_run("silicone-14-awg", 60.0, "buried"), Carried::bank).limit_c ==
          90.0);
    CHECK(limit_where(true, bench_run("silicone-14-awg", 60.0, "bed"), Carried::bank).limit_c ==
          180.0);
}

// Source: the rule that unknown facts never improve a verdict.
TEST_CASE("an unknown wet limit does not count as a dry one") {
    RunParts run = bench_run("uf-b-10-awg", 40.0, "conduit");
    run.insulation->limit_wet_c.reset();
    CHECK(limit_where(true, run).wet_unknown);
    check_not_assessed(insulation_where(true, run), "limit_wet_c");
    check_sentence(insulation_where(true, run));
    CHECK(insulation_where(false, run).severity == Severity::none);
    run = bench_run("uf-b-10-awg", 120.0, "conduit");
    run.insulation->limit_wet_c.reset();
    CHECK(insulation_where(true, run).severity == Severity::danger);
}

// Source: the rule that a worse quantity is never better.
TEST_CASE("hotter air never improves insulation, in a wet place or a dry one") {
    const double step_k = in_a_slow_build() ? 50.0 : 5.0;
    for (const Wire& wire : starter().wires) {
        if (wire.insulation.empty()) continue;
        for (const bool wet : {false, true}) {
            for (const Carried carries : {Carried::array, Carried::bank}) {
                double before = 1e9;
                int worst = 0;
                for (double air_c = 0.0; air_c <= 250.0; air_c += step_k) {
                    const Margin now = insulation_where(wet, bench_run(wire.id, air_c), carries);
                    CAPTURE(wire.id);
                    CAPTURE(air_c);
                    const int bad = badness(now.severity, now.consequence);
                    CHECK(bad >= worst);
                    if (now.headroom) CHECK(*now.headroom <= before);
                    before = now.headroom.value_or(before);
                    worst = bad;
                }
            }
        }
    }
}
