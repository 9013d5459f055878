#include "planted_faults.hpp"
#include "refusal.hpp"
#include "within.hpp"

#include <doctest/doctest.h>

#include "heatmatch/match/candidate/assess.hpp"

using heatmatch::Candidate;
using heatmatch::diagnose;
using heatmatch::Diagnosis;
using heatmatch::FaultKind;
using heatmatch::Hypothesis;
using heatmatch::InvalidInput;
using heatmatch::Reading;
using heatmatch::Readings;

namespace {

/// Three rows of a real circuit, without noise.
Readings exact_rows(const RealCircuit& real, const MeterSet& set = {}) {
    NoisyMeters exact(1, 0.0);
    Readings readings;
    for (const double sun : {950.0, 600.0, 320.0}) {
        readings.rows.push_back(noisy_reading(real, sun, 10.0 + 0.03 * sun, 10.0, set, exact));
    }
    return readings;
}

std::string first_name(const Diagnosis& diagnosis) {
    return diagnosis.ranked.front().name;
}

bool mentions(const heatmatch::Sentences& lines, const std::string& piece) {
    return std::any_of(lines.begin(), lines.end(),
                       [&](const heatmatch::Sentence& line) { return contains(line, piece); });
}

}  // namespace

// The readings are made by the test's own circuit: strings by bisection, Ohm's law.
TEST_CASE("without noise every planted fault explains its readings, and nothing better does") {
    unsigned seed = 700;
    for (const Candidate& candidate : bench_candidates()) {
        for (const FaultKind kind : possible_kinds(candidate.circuit)) {
            NoisyMeters dice(++seed, 0.0);
            RealCircuit real = sound_circuit(candidate.circuit);
            const std::string told = plant(real, kind, candidate.circuit, dice);
            CAPTURE(candidate.circuit.title());
            CAPTURE(std::string(word_of(kind)));
            CAPTURE(told);
            const Diagnosis diagnosis = diagnose(candidate, exact_rows(real));
            CHECK(in_group(diagnosis, kind));
            CHECK(hypothesis_of(diagnosis, kind).misfit < 0.6);
            CHECK(!diagnosis.unexplained);
            CHECK(diagnosis.indistinguishable == (diagnosis.group > 1));
        }
    }
}

TEST_CASE("the fitted number is the planted one") {
    RealCircuit real = sound_circuit(bench_pair().circuit);
    const auto number = [](const Diagnosis& diagnosis, FaultKind kind, double planted) {
        const Hypothesis found = hypothesis_of(diagnosis, kind);
        REQUIRE(!found.fitted.empty());
        CHECK(found.fitted.front().low <= planted);
        CHECK(found.fitted.front().high >= planted);
        return found.fitted.front().value;
    };
    real.joint_ohm = 1.5;
    CHECK(within(number(diagnose(bench_pair(), exact_rows(real)), FaultKind::hot_joint, 1.5), 1.5,
                 0.1));
    real = sound_circuit(bench_pair().circuit);
    real.sun_share = 0.6;
    CHECK(
        within(number(diagnose(bench_pair(), exact_rows(real)), FaultKind::dirt, 0.6), 0.6, 0.05));
    real = sound_circuit(bench_pair().circuit);
    real.branches_ohm.back() *= 0.5;
    real.measured_element_ohm *= 0.5;
    CHECK(within(number(diagnose(bench_pair(), exact_rows(real)), FaultKind::turns_shorted, 0.5),
                 0.5, 0.05));
}

TEST_CASE("low sun and dirt read alike: the next measurement is a cleaned panel") {
    RealCircuit real = sound_circuit(bench_pair().circuit);
    real.sun_share = 0.6;
    const Diagnosis diagnosis = diagnose(bench_pair(), exact_rows(real));
    CHECK(diagnosis.indistinguishable);
    CHECK(diagnosis.group <= 3);  // panels that have lost current only are the third
    CHECK(in_group(diagnosis, FaultKind::low_sun));
    CHECK(in_group(diagnosis, FaultKind::dirt));
    CHECK(within(hypothesis_of(diagnosis, FaultKind::dirt).misfit,
                 hypothesis_of(diagnosis, FaultKind::low_sun).misfit, 1e-6));
    CHECK(contains(diagnosis.verdict, "do not distinguish"));
    REQUIRE(!diagnosis.next.empty());
    CHECK(diagnosis.next.front().reading.text() == "Isc of a cleaned panel");
    // 1 / 0.6 - 1 over an error of 3 %.
    CHECK(within(diagnosis.next.front().separation, (1.0 / 0.6 - 1.0) / 0.03, 0.1));
    CHECK(contains(diagnosis.verdict, "cleaned panel"));
}

TEST_CASE("a whole panel bypassed reads as all its sections: each panel by itself is next") {
    RealCircuit real = sound_circuit(bench_pair().circuit);
    real.strings.back() -= 1.0;
    const Diagnosis diagnosis = diagnose(bench_pair(), exact_rows(real));
    CHECK(diagnosis.indistinguishable);
    CHECK(in_group(diagnosis, FaultKind::panel_missing));
    CHECK(in_group(diagnosis, FaultKind::section_bypassed));
    const Hypothesis sections = hypothesis_of(diagnosis, FaultKind::section_bypassed);
    CHECK(within(sections.misfit, hypothesis_of(diagnosis, FaultKind::panel_missing).misfit, 1e-3));
    CHECK(contains(sections.sentence, "3 sections of 6"));
    CHECK(diagnosis.next.front().reading.text() == "open_v of each panel");
}

TEST_CASE("voltage over current alone identifies an open branch in any weather") {
    RealCircuit real = sound_circuit(bench_pair().circuit);
    real.branches_ohm.pop_back();
    const MeterSet two{.array_v = false,
                       .open_v = false,
                       .short_a = false,
                       .irradiance = false,
                       .panel_temperature = false,
                       .air = false,
                       .element_ohm = false,
                       .bank_ohm = false};
    const Diagnosis diagnosis = diagnose(bench_pair(), exact_rows(real, two));
    const Hypothesis open = hypothesis_of(diagnosis, FaultKind::element_open);
    CHECK(in_group(diagnosis, FaultKind::element_open));
    CHECK(open.misfit < 0.5);
    CHECK(hypothesis_of(diagnosis, FaultKind::as_expected).misfit > 30.0);
    CHECK(hypothesis_of(diagnosis, FaultKind::dirt).misfit > 30.0);
    REQUIRE(!open.evidence.empty());
    CHECK(contains(open.evidence.front(), "voltage over current"));
    CHECK(contains(open.sentence, "1 of 2 branches"));
    CHECK(mentions(diagnosis.remarks, "The sun of every row is fitted"));
}

TEST_CASE("one open branch gives no current, and its resistance identifies it") {
    const Candidate& single = bench_candidates().back();
    RealCircuit real = sound_circuit(single.circuit);
    real.branches_ohm.clear();
    MeterSet set{.element_ohm = false, .bank_ohm = false};
    const Diagnosis without = diagnose(single, exact_rows(real, set));
    CHECK(in_group(without, FaultKind::element_open));
    CHECK(contains(hypothesis_of(without, FaultKind::element_open).sentence, "whole bank"));
    real.measured_element_ohm = std::numeric_limits<double>::infinity();
    set.element_ohm = true;
    const Diagnosis with = diagnose(single, exact_rows(real, set));
    CHECK(first_name(with) == "element open");
    CHECK(with.group == 1);
    CHECK(with.verdict == with.ranked.front().sentence);
}

TEST_CASE("a tolerance is not a fault, twice the tolerance is") {
    RealCircuit real = sound_circuit(bench_pair().circuit);
    const auto& each = bench_pair().circuit.bank.each;
    const auto scale = [&](double factor) {
        RealCircuit other = real;
        for (double& ohm : other.branches_ohm) ohm *= factor;
        other.measured_element_ohm *= factor;
        return exact_rows(other);
    };
    const double high = each.high_ohm / each.typical_ohm;
    const Diagnosis inside = diagnose(bench_pair(), scale(1.0 + 0.6 * (high - 1.0)));
    CHECK(first_name(inside) == "as expected");
    CHECK(inside.group == 1);
    CHECK(contains(inside.verdict, "They show no fault, which promises nothing"));
    const Diagnosis outside = diagnose(bench_pair(), scale(1.0 + 3.0 * (high - 1.0)));
    CHECK(hypothesis_of(outside, FaultKind::as_expected).misfit > 15.0);
}

TEST_CASE("a hot joint is placed if the volts at the array were measured") {
    RealCircuit real = sound_circuit(bench_pair().circuit);
    real.joint_ohm = 2.0;
    const Diagnosis between = diagnose(bench_pair(), exact_rows(real));
    CHECK(first_name(between) == "hot joint");
    CHECK(between.group == 1);
    CHECK(contains(between.verdict, "between array and bank"));
    real.joint_ohm = 0.0;
    real.array_joint_ohm = 2.0;
    const Diagnosis before = diagnose(bench_pair(), exact_rows(real));
    CHECK(contains(hypothesis_of(before, FaultKind::hot_joint).sentence, "in the array"));
    CHECK(in_group(before, FaultKind::hot_joint));
}

TEST_CASE("the short-circuit current as sun meter hides dirt, and the diagnosis reports it") {
    RealCircuit real = sound_circuit(bench_pair().circuit);
    real.sun_share = 0.7;
    const Diagnosis diagnosis = diagnose(bench_pair(), exact_rows(real, {.irradiance = false}));
    CHECK(in_group(diagnosis, FaultKind::as_expected));
    CHECK(in_group(diagnosis, FaultKind::dirt));
    CHECK(mentions(diagnosis.remarks, "hides uniform dirt"));
}

TEST_CASE("readings without an explanation are reported as such") {
    Readings readings{.rows = {{.irradiance_w_m2 = 300.0,
                                .bank_v = 60.0,
                                .bank_a = 1.0,
                                .open_v = 20.0,
                                .short_a = 8.0,
                                .element_ohm = 3.0,
                                .bank_ohm = 90.0}}};
    const Diagnosis diagnosis = diagnose(bench_pair(), readings);
    CHECK(diagnosis.unexplained);
    CHECK(contains(diagnosis.verdict, "No fault in the list explains the readings"));
}

TEST_CASE("a log of two weeks is thinned, with a remark") {
    RealCircuit real = sound_circuit(bench_pair().circuit);
    real.branches_ohm.pop_back();
    NoisyMeters meters(9);
    Readings readings;
    for (int i = 0; i < 2000; ++i) {
        const double sun = std::max(0.0, 900.0 * std::sin(0.05 * i));
        Reading row = noisy_reading(
            real, sun, 12.0 + 0.03 * sun, 12.0,
            {.open_v = false, .short_a = false, .element_ohm = false, .bank_ohm = false}, meters);
        row.unix_time_s = 1.7e9 + 600.0 * i;
        readings.rows.push_back(row);
    }
    const Diagnosis diagnosis = diagnose(bench_pair(), readings);
    CHECK(first_name(diagnosis) == "element open");
    CHECK(mentions(diagnosis.remarks, "12 of 2000 rows"));
}

TEST_CASE("one wild reading does not turn the verdict") {
    const RealCircuit real = sound_circuit(bench_pair().circuit);
    Readings readings = exact_rows(real);
    readings.rows.push_back(exact_rows(real).rows.front());
    *readings.rows.back().bank_v *= 0.5;
    const Diagnosis diagnosis = diagnose(bench_pair(), readings);
    CHECK(first_name(diagnosis) == "as expected");
    CHECK(!diagnosis.unexplained);
    CHECK(mentions(diagnosis.remarks, "1 reading is more than 5 times the meter error off"));
    CHECK(mentions(diagnosis.remarks, "voltage at the bank"));
}

TEST_CASE("weights add up to one and follow the scores; the group comes first") {
    RealCircuit real = sound_circuit(bench_pair().circuit);
    real.joint_ohm = 1.0;
    const Diagnosis diagnosis =
        diagnose(bench_pair(), exact_rows(real, {.array_v = false, .open_v = false}));
    double sum = 0.0;
    for (const Hypothesis& each : diagnosis.ranked) sum += each.weight;
    CHECK(within(sum, 1.0, 1e-9));
    for (std::size_t i = 1; i < diagnosis.ranked.size(); ++i) {
        const Hypothesis& a = diagnosis.ranked[i - 1];
        const Hypothesis& b = diagnosis.ranked[i];
        CHECK((a.score <= b.score || i == diagnosis.group));
        CHECK((a.weight >= b.weight || i == diagnosis.group));
    }
}

TEST_CASE("readings that cannot be used are refused with a remedy") {
    const auto refusal = [](const Readings& readings) {
        return refusal_of<InvalidInput>(
            [&] { static_cast<void>(diagnose(bench_pair(), readings)); });
    };
    CHECK(holds(refusal({}), "measure voltage and current at the bank"));
    CHECK(holds(refusal({.rows = {{.irradiance_w_m2 = 500.0, .air_c = 10.0}}}), "usable"));
    CHECK(holds(refusal({.rows = {{.bank_v = 36000.0, .bank_a = 5.0}}}), "looks like mV"));
    CHECK(holds(refusal_of<InvalidInput>(
                    [] { static_cast<void>(diagnose(Candidate{}, {.rows = {{.bank_v = 30.0}}})); }),
                "panel"));
    heatmatch::DiagnosisOptions options;
    options.volt_v = 0.0;
    CHECK(holds(refusal_of<InvalidInput>([&] {
                    static_cast<void>(diagnose(
                        bench_pair(), exact_rows(sound_circuit(bench_pair().circuit)), options));
                }),
                "volt_v"));
}
