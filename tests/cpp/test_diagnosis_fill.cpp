#include "operation_bench.hpp"
#include "synthetic_readings.hpp"
#include "within.hpp"

#include <doctest/doctest.h>

#include "heatmatch/heat/bed_shells.hpp"
#include "heatmatch/match/candidate/assess.hpp"

using heatmatch::Candidate;
using heatmatch::diagnose;
using heatmatch::Diagnosis;
using heatmatch::FaultKind;
using heatmatch::Hypothesis;
using heatmatch::Reading;
using heatmatch::Readings;

namespace {

/// Seven hours of sun into the demo's store by the bed of eight shells, another model than the
/// closed form that the diagnosis compares with; its sand conducts that many times as well.
Readings heated(double factor, unsigned seed, bool with_time = true) {
    const heatmatch::BankHeat& heat = *demo_standing().circuit.heat;
    heatmatch::BedFill fill = heat.likely.fill;
    const heatmatch::Medium& medium = heat.store->medium;
    fill.conductivity =
        heatmatch::Conductivity::of_grains(medium.k20_w_mk * factor, medium.grain_mm.value_or(0.5));
    heatmatch::BedShells bed(fill, heat.likely.shell, heat.likely.legs, heat.likely.air_c,
                             heat.likely.air_c);
    const RealCircuit real = sound_circuit(demo_standing().circuit);
    NoisyMeters meters(seed);
    Readings readings;
    for (int quarter = 0; quarter <= 28; ++quarter) {
        const double sun = 850.0;
        Reading row = noisy_reading(
            real, sun, 40.0, 15.0,
            {.open_v = false, .short_a = false, .element_ohm = false, .bank_ohm = false}, meters);
        const TrueReading is = read_ideally(real, sun, 40.0);
        if (with_time) row.unix_time_s = 1.7e9 + 900.0 * quarter;
        if (quarter > 0) bed.step(is.bank_v * is.bank_a, 900.0);
        if (quarter > 0) {
            row.sheath_c = bed.sheath_c() + 5.0 * meters.normal();
            row.store_c = bed.bed_mean_c() + 5.0 * meters.normal();
        }
        readings.rows.push_back(row);
    }
    return readings;
}

}  // namespace

TEST_CASE("sand that conducts otherwise is found by the temperatures of its store") {
    int found = 0;
    int cases = 0;
    unsigned seed = 40;
    for (const double factor : {0.35, 0.45, 0.55, 2.0, 2.5, 3.5, 5.0}) {
        for (int repeat = 0; repeat < 2; ++repeat) {
            const Diagnosis diagnosis = diagnose(demo_standing(), heated(factor, ++seed));
            const Hypothesis fill = hypothesis_of(diagnosis, FaultKind::fill_conductivity);
            const double k20 = demo_standing().circuit.heat->store->medium.k20_w_mk * factor;
            ++cases;
            found += in_group(diagnosis, FaultKind::fill_conductivity) ? 1 : 0;
            CHECK(within(fill.fitted.front().value, k20, 0.35));
        }
    }
    CHECK(found >= 0.9 * cases);
}

TEST_CASE("sand within the band of its medium is as expected") {
    for (const double factor : {0.9, 1.0, 1.15}) {
        const Diagnosis diagnosis = diagnose(demo_standing(), heated(factor, 7));
        CAPTURE(factor);
        CHECK(diagnosis.ranked.front().name == "as expected");
    }
}

TEST_CASE("temperatures without a store, or without power, are not used, with a remark") {
    Candidate without = demo_standing();
    without.circuit.heat.reset();
    const Diagnosis diagnosis = diagnose(without, heated(1.0, 3));
    CHECK(std::none_of(diagnosis.ranked.begin(), diagnosis.ranked.end(),
                       [](const auto& each) { return each.kind == FaultKind::fill_conductivity; }));
    CHECK(std::any_of(diagnosis.remarks.begin(), diagnosis.remarks.end(), [](const auto& remark) {
        return contains(remark, "the store is not described");
    }));
    Readings cold = heated(1.0, 3);
    for (Reading& row : cold.rows) {
        row.bank_a.reset();
        row.bank_v.reset();
    }
    const Diagnosis powerless = diagnose(demo_standing(), cold);
    CHECK(std::any_of(powerless.remarks.begin(), powerless.remarks.end(), [](const auto& remark) {
        return contains(remark, "no row has both such a temperature and a power");
    }));
}
