#include "demo.hpp"

#include <doctest/doctest.h>

#include "heatmatch/answer/plan_line.hpp"
#include "heatmatch/match/candidate/assess.hpp"

TEST_CASE("a plan is one more row of the other ways") {
    heatmatch::Plan plan;
    CHECK(heatmatch::plan_row(plan).empty());
    plan.circuits = {heatmatch::assess(starter(), demo())};
    plan.kwh = 302.0;
    plan.days = 151.0;
    const heatmatch::Sentences row = heatmatch::plan_row(plan);
    REQUIRE(row.size() == 6);
    CHECK(row[0].text() == "everything");
    CHECK(row[1].text() == "2 panels on 1 circuits: heatmatch plan");
    CHECK(row[2].text() == "2.00");
    CHECK(row[5].text() == "90");  // Voc of the demo's barn pair at the record low
}
