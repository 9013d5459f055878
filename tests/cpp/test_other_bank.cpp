#include "planted_faults.hpp"
#include "within.hpp"

#include <doctest/doctest.h>

using namespace heatmatch;

namespace {

/// Only volts and amperes of the bank; and the ohms of an element where asked.
constexpr MeterSet clamp_only{.array_v = false,
                              .open_v = false,
                              .short_a = false,
                              .irradiance = false,
                              .panel_temperature = false,
                              .air = false,
                              .element_ohm = false,
                              .bank_ohm = false};

/// Readings of a bank of that many branches, each of `factor` times its ohms.
Readings rows_of(int branches, double factor, std::vector<double> suns,
                 const MeterSet& set = MeterSet{}) {
    RealCircuit real = sound_circuit(bench_pair().circuit);
    const double each = real.branches_ohm.front() * factor;
    real.branches_ohm.assign(static_cast<std::size_t>(branches), each);
    real.measured_element_ohm *= factor;
    NoisyMeters exact(1, 0.0);
    Readings readings;
    for (const double sun : suns) {
        readings.rows.push_back(noisy_reading(real, sun, 10.0 + 0.03 * sun, 10.0, set, exact));
    }
    return readings;
}

}  // namespace

// Source: by Ohm's law: two branches of an element of 1000 W at 240 V (57.6 ohm) where those
// described have 14.4 ohm at 120 V read four times the ohms.
TEST_CASE("another element is found by its resistance and named from the catalog") {
    const DiagnosisOptions with_catalog{.parts = &starter()};
    const Diagnosis found =
        diagnose(bench_pair(), rows_of(2, 4.0, {900.0, 600.0, 300.0}), with_catalog);
    const Hypothesis other = hypothesis_of(found, FaultKind::another_element);
    CHECK(found.ranked.front().kind == FaultKind::another_element);
    CHECK(found.group == 1);
    const double cold = sound_circuit(bench_pair().circuit).measured_element_ohm;
    CHECK(within(other.fitted.front().value, 4.0 * cold, 0.02));
    CHECK(contains(other.sentence, "In the catalog"));
    // One name fits, several fit.
    const std::string said = other.sentence.text();
    const std::string names = said.substr(said.find("In the catalog"));
    const bool several = names.substr(0, names.find(" fit")).find(',') != std::string::npos;
    CHECK((names.find(" fits.") == std::string::npos) == several);
    const Diagnosis unnamed = diagnose(bench_pair(), rows_of(2, 4.0, {900.0, 600.0, 300.0}));
    CHECK_FALSE(contains(hypothesis_of(unnamed, FaultKind::another_element).sentence, "catalog"));
    CHECK_FALSE(contains(hypothesis_of(unnamed, FaultKind::another_element).sentence, "  "));
    const Diagnosis odd = diagnose(bench_pair(), rows_of(2, 17.0, {900.0, 600.0}), with_catalog);
    CHECK(contains(hypothesis_of(odd, FaultKind::another_element).sentence, "No element"));
}

TEST_CASE("another number of elements is found where the resistance of one is as described") {
    const Diagnosis found = diagnose(bench_pair(), rows_of(3, 1.0, {900.0, 600.0, 300.0}));
    CHECK(found.ranked.front().kind == FaultKind::another_number_of_elements);
    CHECK(found.ranked.front().fitted.front().value == 3.0);
    CHECK(contains(found.ranked.front().sentence, "1S3P, not 1S2P"));
}

TEST_CASE("voltage over current is beside the described resistance") {
    const Bank& bank = bench_pair().circuit.bank;
    const Diagnosis found = diagnose(bench_pair(), rows_of(1, 1.0, {900.0, 600.0}, clamp_only));
    CHECK(contains(found.bank_ohms, "V/I at the bank: read"));
    CHECK(contains(found.bank_ohms, "described " + format_number(bank.typical_ohm(), 3)));
    CHECK(contains(found.bank_ohms, "ratio "));
    RealCircuit open = sound_circuit(bench_pair().circuit);
    open.branches_ohm.clear();
    NoisyMeters exact(1, 0.0);
    const Reading row = noisy_reading(open, 900.0, 40.0, 10.0, clamp_only, exact);
    CHECK(contains(diagnose(bench_pair(), {.rows = {row}}).bank_ohms, "reads as open"));
    CHECK(diagnose(bench_pair(), {.rows = {{.open_v = 70.0}}}).bank_ohms.empty());
}

// Twice the ohms: a branch open, one element too few, another element, both in series and half of
// it shorted ... One pair of readings is one number, and cannot choose among them.
TEST_CASE("one reading gives no explanation a weight that it cannot carry") {
    const Diagnosis one = diagnose(bench_pair(), rows_of(1, 1.0, {800.0}, clamp_only));
    CHECK(one.indistinguishable);
    for (const FaultKind kind : {FaultKind::element_open, FaultKind::another_element,
                                 FaultKind::another_number_of_elements}) {
        CHECK(in_group(one, kind));
    }
    for (std::size_t i = 1; i < one.group; ++i) {
        CHECK(one.ranked[i].weight == doctest::Approx(one.ranked.front().weight));
    }
    CHECK(one.ranked.front().weight < 0.5);
    const double sound = hypothesis_of(one, FaultKind::as_expected).weight;
    CHECK(sound >= 0.05 * one.ranked.front().weight);
    const auto says_so = [](const Diagnosis& of) {
        return std::any_of(of.remarks.begin(), of.remarks.end(), [](const Sentence& said) {
            return contains(said, "One row of readings cannot decide");
        });
    };
    CHECK(says_so(one));
    const Diagnosis several =
        diagnose(bench_pair(), rows_of(1, 1.0, {900.0, 800.0, 600.0, 300.0}, clamp_only));
    CHECK_FALSE(says_so(several));
    CHECK(hypothesis_of(several, FaultKind::as_expected).weight < 0.01 * sound);
}
