#include "demo.hpp"
#include "table_texts.hpp"

#include "heatmatch/answer/duties_table.hpp"

using namespace heatmatch;

namespace {

Candidate candidate_at(int series, Site site) {
    Candidate candidate;
    candidate.circuit =
        bench_circuit("silicon-60-cell-245", {series, 1}, "tubular-1000-120", {1, 1});
    RunParts parts = bench_run("pv-wire-10-awg", 20.0);
    parts.run.inside = true;
    candidate.circuit.runs.push_back(parts);
    candidate.site = std::move(site);
    return candidate;
}

const Site american{.record_low_c = -20.0, .code = WiringCode::nec};

}  // namespace

TEST_CASE("a row for each duty: its threshold, whether it is due, and how it is met") {
    const Table table = duties_table(candidate_at(2, american));
    CHECK(table.rows.size() == 9);
    CHECK(table.columns.size() == 8);
    CHECK(contains(line(table.rows[0]),
                   "guarded live parts|NEC|50 V|yes|not stated|site.live_parts_enclosed|From"));
    CHECK(contains(line(table.rows[1]), "ground-fault protection|NEC|> 30 V, 8 A|yes|not met"));
    CHECK(contains(line(table.rows[2]), "arc-fault protection|NEC|80 V|yes|not met"));
    CHECK(contains(table.legend.front(), "Local codes and licensed practice decide."));
}

TEST_CASE("a line for each that is due or may be") {
    const Sentences lines = duty_lines(candidate_at(2, american));
    REQUIRE(lines.size() == 9);
    CHECK(lines[0].text() ==
          "guarded live parts (NEC, from 50 V): not stated; state site.live_parts_enclosed.");
    CHECK(lines[1].text() == "ground-fault protection (NEC, > 30 V or 8 A): not met.");
    CHECK(lines[4].text() == "disconnect (NEC, at any voltage): not met.");
    Site nowhere = american;
    nowhere.array_on = ArrayPlace::ground;
    Candidate outside = candidate_at(2, nowhere);
    outside.circuit.runs[0].run.inside = false;
    CHECK(
        contains(duty_lines(outside)[2], "may apply, not met; state surroundings.metal_raceway."));
}

// Source: NEC 690.11: from 80 V on; NEC 110.27(A): from 50 V on; one panel is 43 V.
TEST_CASE("duties not due are counted, not listed in lines") {
    const Candidate one = candidate_at(1, american);
    CHECK(duty_lines(one).size() == 7);
    CHECK(contains(duties_sentence(one), "2 more do not apply here."));
    CHECK(contains(duties_sentence(candidate_at(2, american)), "9 apply, 0 may apply"));
}

TEST_CASE("the steps of 30, 60 and 80 V are named in every answer") {
    CHECK(
        contains(steps_sentence(candidate_at(2, american)),
                 "above 30 V (shock where wet, ground faults), above 60 V (shock where dry), above "
                 "80 V (arc faults)."));
    CHECK(contains(steps_sentence(candidate_at(1, american)),
                   "above 30 V (shock where wet, ground faults), not above 60 V (shock where dry), "
                   "not above 80 V (arc faults)."));
}

TEST_CASE("the scope names building or ground, earth, wires inside and the code") {
    const std::string untold = scope_sentence(candidate_at(2, american)).text();
    CHECK(contains(untold, "mounting of the panels not stated"));
    CHECK(contains(untold, "floating or grounded not stated"));
    CHECK(contains(untold, "inside a building: bench"));
    CHECK(contains(untold, "National Electrical Code"));
    Site stated = cold_site;
    stated.array_on = ArrayPlace::ground;
    stated.earthing = Earthing::floating;
    Candidate outside = candidate_at(2, stated);
    outside.circuit.runs[0].run.inside = false;
    const std::string told = scope_sentence(outside).text();
    CHECK(contains(told, "panels on the ground; floating; no wire inside a building"));
    CHECK(contains(told, "code not stated, so both"));
}

TEST_CASE("duties change neither severity nor other results") {
    Candidate candidate = candidate_at(2, american);
    const Severity before = candidate.severity();
    const Severity worst = candidate.worst_severity();
    CHECK_FALSE(duties_of(candidate).empty());
    CHECK(candidate.severity() == before);
    CHECK(candidate.worst_severity() == worst);
    CHECK(count_margins(candidate.margins(), "duties") == 0);
}
