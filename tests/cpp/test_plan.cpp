#include "long_run.hpp"
#include "match/plan/plan_search.hpp"
#include "plan_yards.hpp"
#include "refusal.hpp"

#include <memory>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/match/candidate/assess.hpp"
#include "heatmatch/match/plan/plan.hpp"
#include "heatmatch/match/plan/unlocks.hpp"

using heatmatch::Installation;
using heatmatch::Plan;

namespace {

std::shared_ptr<const heatmatch::Weather> weather_of_yard(const Installation& yard) {
    static heatmatch::WeatherMemory memory;
    heatmatch::Sentences remarks;
    return heatmatch::own_weather(yard, remarks, &memory);
}

/// The demo without a second kind of panels: quick to plan.
Installation quick_yard() {
    Installation yard = demo();
    yard.elements = {{.element = "storage-rod-1000-240", .count = 4}};
    yard.goals.budget = 500.0;
    return yard;
}

const Plan& quick_plan() {
    static const Plan plan = heatmatch::plan(starter(), quick_yard());
    return plan;
}

}  // namespace

// Source: plain enumeration over the same curves and the same check of circuits together.
TEST_CASE("the search finds the most heat of all plans of small yards") {
    const int yards = in_the_long_run() ? 100 : in_a_slow_build() ? 1 : 8;
    Dice dice(23);
    int with_two = 0;
    for (int yard_number = 0; yard_number < yards; ++yard_number) {
        const Installation yard = small_yard(dice);
        CAPTURE(yard_number);
        heatmatch::RankOptions options;
        options.weather = weather_of_yard(yard);
        const auto task = heatmatch::PlanTask::make(starter(), yard, options);
        heatmatch::CircuitPool pool(*task);
        heatmatch::PlanSearch search(pool);
        PlainEnumeration plain(yard, options.weather);
        for (const double headroom : {0.0, 0.2}) {
            CAPTURE(headroom);
            const heatmatch::PlanRequirement needed{
                .headroom = headroom, .circuits_max = 2, .budget = yard.goals.budget};
            const heatmatch::PlanOutcome found = search.best(needed, {});
            const double kwh = found.best ? found.best->kwh : 0.0;
            CHECK(found.proven);
            CHECK(kwh == doctest::Approx(plain.best_kwh(headroom)).epsilon(1e-9));
            CHECK(found.at_most_kwh >= kwh);
            if (found.best && found.best->circuits.size() == 2) ++with_two;
        }
    }
    MESSAGE("plans of two circuits: ", with_two);
    if (!in_a_slow_build()) CHECK(with_two > 0);
}

TEST_CASE("a plan is what an assessment of its circuits says") {
    const Plan& plan = quick_plan();
    REQUIRE(!plan.circuits.empty());
    const auto assessed = heatmatch::assess_circuits(starter(), plan.installation);
    REQUIRE(assessed.size() == plan.circuits.size());
    double kwh = 0.0;
    for (std::size_t i = 0; i < assessed.size(); ++i) {
        CHECK(assessed[i].severity() != heatmatch::Severity::danger);
        CHECK(assessed[i].smallest_headroom() >= plan.headroom);
        CHECK(assessed[i].objective() == plan.circuits[i].objective());
        kwh += assessed[i].objective();
    }
    CHECK(plan.kwh == doctest::Approx(kwh).epsilon(1e-12));
    CHECK(plan.at_most_kwh >= plan.kwh);
    CHECK(plan.gap() <= 0.0101);
    CHECK(plan.bounds.panels_kwh > plan.kwh);
    CHECK(plan.bounds.store_kwh >= plan.kwh * (1.0 - 1e-9));
    CHECK(plan.bounds.bill_kwh >= plan.kwh * (1.0 - 1e-9));
    REQUIRE(plan.single);
    CHECK(plan.single->objective() <= plan.kwh * 1.0001);
    REQUIRE(plan.bill.typical());
    CHECK(*plan.bill.typical() <= 500.0);
}

TEST_CASE("panels are used or named as idle with a reason") {
    const Plan& plan = quick_plan();
    int used = 0;
    for (const auto& candidate : plan.circuits) used += candidate.circuit.panels.count();
    for (const auto& idle : plan.idle) {
        CHECK(idle.count > 0);
        CHECK(!idle.why.text().empty());
        used += idle.count;
    }
    CHECK(used == 2 + 4 + 2);
}

TEST_CASE("a plan says its heat and price first") {
    const Plan& plan = quick_plan();
    const heatmatch::Sentences lines = plan.summary();
    REQUIRE(!lines.empty());
    const std::string first = lines.front().text();
    CAPTURE(first);
    CHECK(contains(first, "kWh a day"));
    CHECK(contains(first, "USD"));
    for (const heatmatch::Sentence& line : lines) {
        CAPTURE(line.text());
        CHECK(line.text().back() == '.');
        CHECK(line.text().find_first_of("{}") == std::string::npos);
    }
}

TEST_CASE("goals of a plan are kept") {
    Installation yard = quick_yard();
    yard.goals.circuits_max = 1;
    yard.goals.volts_max = 60.0;
    const Plan low = heatmatch::plan(starter(), yard);
    REQUIRE(low.circuits.size() == 1);
    CHECK(low.circuits.front().circuit.cold_voltage_v() <= 60.0);
    CHECK(low.kwh < quick_plan().kwh);
    yard = quick_yard();
    yard.goals.headroom_min = 0.35;
    const Plan roomy = heatmatch::plan(starter(), yard);
    for (const auto& candidate : roomy.circuits) CHECK(candidate.smallest_headroom() >= 0.35);
    CHECK(roomy.kwh <= quick_plan().kwh);
}

TEST_CASE("impossible goals are answered with the nearest possible") {
    Installation yard = quick_yard();
    yard.goals.budget = 1.0;
    const Plan none = heatmatch::plan(starter(), yard);
    CHECK(none.circuits.empty());
    CHECK(none.kwh == 0.0);
    REQUIRE(none.remarks.size() >= 2);
    const std::string nearest = none.remarks.back().text();
    CAPTURE(nearest);
    CHECK(contains(nearest, "Without the budget"));
    CHECK(contains(nearest, "USD"));
}

TEST_CASE("a plan needs panels, elements and weather") {
    const auto refused = [](const Installation& yard) {
        return refusal_of<heatmatch::InvalidInput>(
            [&] { static_cast<void>(heatmatch::plan(starter(), yard)); });
    };
    Installation yard = quick_yard();
    yard.weather.reset();
    CHECK(contains(refused(yard), "weather"));
    yard = quick_yard();
    yard.elements.clear();
    CHECK(contains(refused(yard), "elements"));
    yard = quick_yard();
    yard.circuit.reset();
    yard.panels.clear();
    CHECK(contains(refused(yard), "panels"));
}

TEST_CASE("a plan stops when asked to") {
    heatmatch::RankOptions options;
    options.progress = [](double) { return false; };
    CHECK_THROWS_AS(static_cast<void>(heatmatch::plan(starter(), demo(), options)),
                    heatmatch::Interrupted);
}

TEST_CASE(
    "goals that are impossible together are told with what is possible, and have no unlocks") {
    Installation yard = quick_yard();
    yard.goals.budget = 1.0;
    yard.goals.volts_max = 20.0;
    yard.goals.headroom_min = 0.9;
    const Plan none = heatmatch::plan(starter(), yard);
    REQUIRE(none.circuits.empty());
    std::string all;
    for (const auto& remark : none.remarks) all += remark.text() + '\n';
    CAPTURE(all);
    CHECK(contains(all, "Without budget, voltage limit, required headroom"));
    CHECK_NOTHROW(static_cast<void>(heatmatch::unlocks(starter(), yard, none)));
}

TEST_CASE("a plan without a fact names where it is written") {
    Installation yard = quick_yard();
    yard.store->moist.reset();
    for (auto& run : yard.runs) run.surroundings.air_c.reset();
    const Plan none = heatmatch::plan(starter(), yard);
    REQUIRE(none.circuits.empty());
    std::string all;
    for (const auto& remark : none.remarks) all += remark.text() + '\n';
    CAPTURE(all);
    CHECK(contains(all, "Circuits cannot be judged without"));
    CHECK(contains(all, "runs[0].surroundings.air_c"));
}

TEST_CASE("a lower voltage limit never has more heat") {
    double last_kwh = 0.0;
    for (const double volts : {25.0, 45.0, 60.0, 110.0}) {
        Installation yard = quick_yard();
        yard.goals.volts_max = volts;
        const Plan made = heatmatch::plan(starter(), yard);
        CAPTURE(volts);
        CHECK(made.kwh >= last_kwh * (1.0 - 0.0101));
        last_kwh = made.kwh;
    }
    CHECK(last_kwh > 0.0);
}
