#include "demo.hpp"

#include <doctest/doctest.h>

#include "heatmatch/answer/plan_line.hpp"
#include "heatmatch/match/candidate/assess.hpp"

TEST_CASE("a plan is one line of the first screen") {
    CHECK(heatmatch::plan_line(nullptr).text() == "With everything you own: heatmatch plan.");
    heatmatch::Plan plan;
    CHECK(contains(heatmatch::plan_line(&plan).text(), "no circuit can be recommended"));
    plan.circuits = {heatmatch::assess(starter(), demo())};
    plan.kwh = 302.0;
    plan.days = 151.0;
    plan.bill = plan.circuits.front().bill;
    plan.bill.budget = 150.0;
    // 90 V: open-circuit voltage of the demo's barn pair at the record low.
    const std::string one = heatmatch::plan_line(&plan).text();
    CHECK(contains(one, "2.00 kWh a day, 1 circuit, "));
    CHECK(contains(one, " of 150 USD, up to 90 V: heatmatch plan."));
    plan.circuits.push_back(plan.circuits.front());
    CHECK(contains(heatmatch::plan_line(&plan).text(), "2 circuits"));
    plan.bill.lines.push_back(
        {.part = "unpriced", .to_buy = 1.0, .state = heatmatch::BillState::price_not_known});
    CHECK(contains(heatmatch::plan_line(&plan).text(), "bill not known"));
}
