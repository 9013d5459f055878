#include "planted_faults.hpp"
#include "within.hpp"

#include <doctest/doctest.h>

using heatmatch::diagnose;
using heatmatch::Diagnosis;
using heatmatch::FaultKind;
using heatmatch::Hypothesis;
using heatmatch::Reading;
using heatmatch::Readings;

namespace {

/// Three rows of a real circuit, without noise.
Readings rows_read_by(const RealCircuit& real, const MeterSet& set = {}) {
    NoisyMeters exact(1, 0.0);
    Readings readings;
    for (const double sun : {950.0, 600.0, 320.0}) {
        readings.rows.push_back(noisy_reading(real, sun, 10.0 + 0.03 * sun, 10.0, set, exact));
    }
    return readings;
}

}  // namespace

// Source: the mutual exchange of sun and panels: a load reads the same at half the sun as at half
// the panels, so V/I alone judges only the load.
TEST_CASE("without sun only the elements are judged, and no share of the sun is named") {
    const MeterSet two{.array_v = false,
                       .open_v = false,
                       .short_a = false,
                       .irradiance = false,
                       .panel_temperature = false,
                       .air = false,
                       .element_ohm = false,
                       .bank_ohm = false};
    const RealCircuit sound = sound_circuit(bench_pair().circuit);
    const Diagnosis blind = diagnose(bench_pair(), rows_read_by(sound, two));
    CHECK(blind.ranked.front().name == "as expected");
    CHECK(blind.verdict.text().starts_with("V/I fits the elements. The panels cannot be judged"));
    for (const Hypothesis& each : blind.ranked) {
        CAPTURE(each.sentence.text());
        CHECK_FALSE(contains(each.sentence, "agree with the described circuit"));
        CHECK_FALSE(contains(each.sentence, "of the measured sun"));
        const bool of_sun = each.kind == FaultKind::low_sun || each.kind == FaultKind::dirt;
        if (!of_sun) continue;
        CHECK(each.fitted.empty());
        CHECK_FALSE(contains(each.sentence, "%"));
    }
    MeterSet seen = two;
    seen.irradiance = true;
    const Diagnosis lit = diagnose(bench_pair(), rows_read_by(sound, seen));
    CHECK_FALSE(contains(lit.verdict, "cannot be judged"));
    CHECK(contains(hypothesis_of(lit, FaultKind::low_sun).sentence, "of the measured sun"));
    MeterSet volts = two;
    volts.irradiance = true;
    Readings unloaded = rows_read_by(sound, volts);
    for (Reading& row : unloaded.rows) row.bank_a.reset();
    const Diagnosis half = diagnose(bench_pair(), unloaded);
    if (half.ranked.front().name == "as expected") {
        CHECK(contains(half.verdict, "The elements cannot be judged"));
    }
}

// Source: Kirchhoff: no current flows through a string with an open connector.
TEST_CASE("a missing panel of a string is bypassed or left out, not disconnected") {
    RealCircuit real = sound_circuit(bench_pair().circuit);
    real.strings.back() -= 1.0;
    const Diagnosis diagnosis = diagnose(bench_pair(), rows_read_by(real));
    const heatmatch::Sentence said = hypothesis_of(diagnosis, FaultKind::panel_missing).sentence;
    CHECK(contains(said, "Bypassed or left out of the string: 1 panel of the 2"));
    CHECK_FALSE(contains(said, "ot connected"));
}
