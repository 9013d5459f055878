#include "figure.hpp"
#include "planted_faults.hpp"

#include <map>

#include <doctest/doctest.h>

using heatmatch::diagnose;
using heatmatch::Diagnosis;
using heatmatch::FaultKind;

namespace {

struct Tally {
    int cases = 0;
    int in_group = 0;
    int first = 0;
    int alone = 0;
    double group = 0.0;
    int measured_next = 0;  //!< where the named measurement could be added
    int still_in_group = 0;
    double group_before = 0.0;
    double group_after = 0.0;
};

bool usable(const heatmatch::Readings& readings) {
    return std::any_of(readings.rows.begin(), readings.rows.end(), [](const auto& row) {
        return row.bank_v || row.bank_a || row.array_v || row.open_v || row.short_a ||
               row.element_ohm || row.bank_ohm;
    });
}

/// Plants every kind of fault in every circuit and returns the sum of what became of them.
Tally tally_of(std::string_view name, unsigned rounds, unsigned seed, bool all_meters,
               bool held_errors = false) {
    std::map<FaultKind, Tally> by_kind;
    Tally all;
    for (unsigned round = 0; round < rounds; ++round) {
        for (const auto& candidate : bench_candidates()) {
            for (const FaultKind kind : possible_kinds(candidate.circuit)) {
                PlantedCase planted =
                    planted_case(candidate, kind, ++seed, all_meters, held_errors);
                if (!usable(planted.readings)) continue;
                const Diagnosis diagnosis = diagnose(planted.candidate, planted.readings);
                const bool found = in_group(diagnosis, kind);
                for (Tally* tally : {&by_kind[kind], &all}) {
                    ++tally->cases;
                    tally->in_group += found ? 1 : 0;
                    tally->first += diagnosis.ranked.front().kind == kind ? 1 : 0;
                    tally->alone += found && diagnosis.group == 1 ? 1 : 0;
                    tally->group += static_cast<double>(diagnosis.group);
                }
                NoisyMeters meters(seed + 100000);
                if (!found || diagnosis.group == 1 || diagnosis.next.empty() ||
                    !add_reading(planted, diagnosis.next.front().reading.text(), meters)) {
                    continue;
                }
                const Diagnosis then = diagnose(planted.candidate, planted.readings);
                ++all.measured_next;
                all.still_in_group += in_group(then, kind) ? 1 : 0;
                all.group_before += static_cast<double>(diagnosis.group);
                all.group_after += static_cast<double>(then.group);
            }
        }
    }
    figure(name, "\nplanted: cases, in the first group, first, alone, mean group");
    const auto show = [](std::string_view kind, const Tally& tally) {
        figure("  ", kind, ": ", tally.cases, ", ", tally.in_group, ", ", tally.first, ", ",
               tally.alone, ", ", tally.group / tally.cases);
    };
    for (const auto& [kind, tally] : by_kind) show(word_of(kind), tally);
    show("all", all);
    if (all.measured_next > 0) {
        figure("  the first measurement named, taken in ", all.measured_next, " cases: group of ",
               all.group_before / all.measured_next, " becomes ",
               all.group_after / all.measured_next, "; the planted one is still in it in ",
               all.still_in_group);
    }
    return all;
}

}  // namespace

// The readings come from curves of single panels, strings added by bisection and Ohm's law in the
// test itself; meters with their stated errors; tolerances of panels and elements drawn as well.
TEST_CASE("planted faults are found with a few meters, alone or in a reported group" *
          doctest::test_suite("numerical")) {
    const Tally all = tally_of("one to five rows, random meters", 3, 20240, false);
    CHECK(all.cases >= 100);
    CHECK(all.in_group >= 0.9 * all.cases);
    CHECK(all.group <= 4.0 * all.cases);
    REQUIRE(all.measured_next >= 30);
    CHECK(all.still_in_group >= 0.9 * all.measured_next);
    CHECK(all.group_after <= 0.7 * all.group_before);
}

TEST_CASE("planted faults are found with all meters, mostly alone" *
          doctest::test_suite("numerical")) {
    const Tally all = tally_of("four rows, all meters", 2, 50240, true);
    CHECK(all.cases >= 100);
    CHECK(all.in_group >= 0.9 * all.cases);
    CHECK(all.group <= 2.0 * all.cases);
}

// Real meters are off by a share that stays; the fit takes every reading for one of its own.
TEST_CASE("planted faults are found with meters that are off all along" *
          doctest::test_suite("numerical")) {
    const Tally all =
        tally_of("four rows, all meters, each off by its error in every row", 2, 80240, true, true);
    CHECK(all.cases >= 100);
    CHECK(all.in_group >= 0.9 * all.cases);
}
