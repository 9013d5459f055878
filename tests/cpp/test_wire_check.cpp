#include "store_bench.hpp"

#include <doctest/doctest.h>

#include "heatmatch/match/candidate/wire_check.hpp"

using heatmatch::Candidate;
using heatmatch::check_wires;
using heatmatch::Severity;
using heatmatch::UnitSystem;
using heatmatch::WireCheck;

namespace {

/// A home run in the sun and a tail of that wire at two rods in the drum, each of which takes that.
Candidate candidate_with_tail(std::string_view tail_wire, std::string_view kind,
                              std::string_view terminals, double element_w) {
    heatmatch::Installation installation = drum();
    installation.store->terminals = heatmatch::find_choice<heatmatch::StoreTerminals>(terminals);
    Candidate candidate{.circuit = circuit_in(installation, "storage-rod-1000-240", 2),
                        .site = {.record_low_c = -20.0}};
    candidate.bright.element_power_w = element_w;
    candidate.catalog = std::make_shared<const heatmatch::Parts>(starter());
    candidate.circuit.runs = {
        bench_run("pv-wire-10-awg", 35.0, "sunlit"),
        bench_run(tail_wire, kind == "bed" ? std::nullopt : std::optional(30.0), kind)};
    candidate.circuit.runs[0].run.name = "home run";
    candidate.circuit.runs[1].run.name = "hot tail";
    candidate.circuit.runs[1].run.carries = heatmatch::Carried::bank;
    return candidate;
}

WireCheck tail_of(const Candidate& candidate) {
    const std::vector<WireCheck> checks = check_wires(candidate);
    REQUIRE(checks.size() == 2);
    CHECK_FALSE(checks[0].at_element);
    CHECK(checks[1].at_element);
    return checks[1];
}

}  // namespace

// Common practice, no source: PVC at buried terminals melts.
TEST_CASE("a PVC tail in the bed melts, and the suitable wire withstands the heat") {
    const WireCheck check = tail_of(candidate_with_tail("thhn-14-awg", "bed", "buried", 150.0));
    CHECK(check.severity == Severity::danger);
    CHECK(check.limiting_part == heatmatch::WirePart::insulation);
    CHECK(*check.conductor_c > 90.0);
    CHECK(contains(check.sentence, "melts"));
    CHECK(contains(check.sentence, " °C"));
    CHECK(contains(check.sentence.text(UnitSystem::us), " °F"));
    CHECK_FALSE(contains(check.sentence.text(UnitSystem::us), " °C"));
    REQUIRE(check.sufficient_wire);
    const heatmatch::Insulation& better =
        heatmatch::find_insulation(starter(), check.sufficient_wire->insulation);
    CHECK(better.limit_c > *check.conductor_c - 25.0);
    CHECK(better.limit_c > 90.0);
    CHECK(contains(check.sufficient_gauge.text(UnitSystem::us), "AWG"));
    // In its place, it passes.
    const WireCheck again =
        tail_of(candidate_with_tail(check.sufficient_wire->id, "bed", "buried", 150.0));
    CHECK(again.severity <= Severity::caution);
    CHECK_FALSE(again.sufficient_wire);
}

TEST_CASE("a cheaper wire of the catalog would not do") {
    const Candidate candidate = candidate_with_tail("thhn-14-awg", "bed", "buried", 150.0);
    const WireCheck check = tail_of(candidate);
    REQUIRE(check.sufficient_wire);
    const double price = *check.sufficient_wire->price.typical();
    for (const heatmatch::Wire& wire : starter().wires) {
        if (wire.price.typical().value_or(1e9) >= price) continue;
        CAPTURE(wire.id);
        const WireCheck other = tail_of(candidate_with_tail(wire.id, "bed", "buried", 150.0));
        CHECK(other.severity != Severity::none);
        // Near its limit it is suitable, but is not proposed.
        CHECK((other.sufficient_wire || other.severity == Severity::caution));
    }
    CHECK(
        tail_of(candidate_with_tail(check.sufficient_wire->id, "bed", "buried", 150.0)).severity ==
        Severity::none);
}

TEST_CASE("plating that ages is a warning, not a danger") {
    // Tinned copper in glass: the braid withstands more than the tin.
    Candidate candidate = candidate_with_tail("silicone-14-awg", "open air", "through wall", 50.0);
    candidate.circuit.bank.element.cold_length_mm = 30.0;
    WireCheck check = tail_of(candidate);
    while (*check.conductor_c < 152.0) {
        candidate.bright.element_power_w += 5.0;
        check = tail_of(candidate);
    }
    CAPTURE(check.sentence);
    REQUIRE(*check.conductor_c < 170.0);
    CHECK(check.severity == Severity::warning);
    CHECK(check.limiting_part == heatmatch::WirePart::plating);
    CHECK(check.limits.front().limit_c == 150.0);
}

// `silicone from 6 cm, PVC nowhere in the bed`
TEST_CASE("each insulation has the distance from which it is suitable") {
    const WireCheck check =
        tail_of(candidate_with_tail("mica-glass-14-awg", "bed", "buried", 150.0));
    REQUIRE(check.reach.size() == starter().insulations.size());
    double before = 1e9;
    for (const heatmatch::InsulationReach& reach : check.reach) {
        CAPTURE(reach.insulation);
        const double from = reach.from_m.value_or(1e9);
        CHECK(from <= before);  // the more it stands, the nearer
        before = from;
    }
    CHECK(*check.reach.back().from_m == 0.0);  // ceramic beads
}

TEST_CASE(
    "where an element's heat is not known the wire at its end is not assessed, with the "
    "reason") {
    Candidate candidate = candidate_with_tail("silicone-14-awg", "open air", "through wall", 50.0);
    candidate.circuit.bank.element.heated_length_mm.reset();
    candidate.circuit.heat =
        heatmatch::bank_heat(candidate.circuit.heat->store, candidate.circuit.bank.element,
                             candidate.circuit.bank.sheath, candidate.circuit.bank.alloy, 1);
    const WireCheck check = tail_of(candidate);
    CHECK(check.at_element);
    CHECK(check.severity == Severity::not_assessed);
    CHECK(contains(check.sentence, "heated_length_mm"));
    CHECK(candidate.heat_unknown());
}

TEST_CASE("no insulation is called suitable in air without any statement") {
    Candidate candidate = candidate_with_tail("silicone-14-awg", "open air", "through wall", 50.0);
    CHECK_FALSE(tail_of(candidate).reach.empty());
    candidate.circuit.runs.back().run.surroundings.air_c.reset();
    CHECK(tail_of(candidate).reach.empty());
}

TEST_CASE("ampacity by the code and by the balance are side by side") {
    const std::vector<WireCheck> checks =
        check_wires(candidate_with_tail("silicone-14-awg", "open air", "through wall", 50.0));
    const WireCheck& home = checks[0];
    REQUIRE(home.code_ampacity_a);
    REQUIRE(home.corrected_ampacity_a);
    REQUIRE(home.balance_ampacity_a);
    CHECK(*home.corrected_ampacity_a <= *home.code_ampacity_a);
    CHECK(*home.balance_ampacity_a > home.current_a);
    CHECK(home.drop_v == doctest::Approx(home.heat_w / home.current_a));
    CHECK(home.gauge.text(UnitSystem::us) == "10 AWG");
    CHECK(home.gauge.text() == "5.26 mm2");
    CHECK(home.severity == Severity::none);
}

TEST_CASE("a run without a wire, and one with unknown surroundings, are not called good") {
    Candidate candidate = candidate_with_tail("silicone-14-awg", "open air", "through wall", 50.0);
    candidate.circuit.runs[0].wire.reset();
    candidate.circuit.runs[0].run.wire = "choose";
    CHECK(check_wires(candidate)[0].severity == Severity::danger);
    candidate = candidate_with_tail("silicone-14-awg", "open air", "through wall", 50.0);
    candidate.circuit.runs[0].run.surroundings.air_c.reset();
    CHECK(check_wires(candidate)[0].severity == Severity::not_assessed);
    candidate.catalog.reset();
    CHECK_FALSE(check_wires(candidate)[0].sufficient_wire);
    CHECK(check_wires(candidate, &starter()).size() == 2);
}

// Source: a margin with less than a tenth of headroom, from 20 °C on, is a caution.
TEST_CASE("an insulation close to its limit at the terminal is not suitable there") {
    const Candidate candidate = candidate_with_tail("thhn-14-awg", "bed", "buried", 150.0);
    const WireCheck check = tail_of(candidate);
    REQUIRE_FALSE(check.reach.empty());
    bool one_suitable = false;
    for (const heatmatch::InsulationReach& reach : check.reach) {
        CAPTURE(reach.insulation);
        const double usable_c = 20.0 + 0.9 * (reach.limit_c - 20.0);
        if (reach.from_m == 0.0) {
            one_suitable = true;
            CHECK(*check.conductor_c <= usable_c + 0.1);
        } else {
            CHECK(*check.conductor_c > usable_c - 1.0);
        }
    }
    CHECK(one_suitable);
}
