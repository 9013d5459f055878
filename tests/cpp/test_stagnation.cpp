#include "operation_bench.hpp"
#include "refusal.hpp"
#include "within.hpp"

#include <algorithm>

#include <doctest/doctest.h>

#include "heatmatch/operation/days/stagnation.hpp"

using namespace heatmatch;

TEST_CASE("fourteen days without heat extraction are hotter than any week of winter" *
          doctest::test_suite("numerical")) {
    const Candidate candidate = standing();
    const Stagnation still = simulate_stagnation(candidate);
    const DayRun week = simulate_day(candidate, demo_year(), january_days());
    CHECK(still.run.days == 14.0);
    CHECK(still.delivered_kwh > 2.0 * week.energy.delivered_kwh);
    CHECK(highest(still.run.series.sheath_c) > highest(week.series.sheath_c));
    CHECK(highest(still.run.series.wall_c) > highest(week.series.wall_c));
    CHECK(still.run.energy.unbalanced_share < 1e-6);
    CHECK(still.run.energy.to_space_kwh == 0.0);
    // Air as in high summer: 27 °C is the demo's warmest daily high, and 10 K within a space.
    CHECK(holds(still.sentences.front(), "37 °C"));
    CHECK(holds(still.sentences.front().text(UnitSystem::us), "98.6 °F"));
}

TEST_CASE("it stays below the margin computed with the highest irradiance all day") {
    const Candidate candidate = standing();
    const Stagnation still = simulate_stagnation(candidate);
    const auto margin = std::find_if(candidate.margins().begin(), candidate.margins().end(),
                                     [](const Margin& each) { return each.name == "stagnation"; });
    REQUIRE(margin != candidate.margins().end());
    CHECK(highest(still.run.series.sheath_c) < *margin->value);
}

TEST_CASE("neither thermostat nor limit helps a circuit that is welded shut" *
          doctest::test_suite("numerical")) {
    Installation installation = demo();
    for (Device& device : installation.devices) device.set_c = 40.0;
    const Stagnation still = simulate_stagnation(standing(installation));
    CHECK(highest(still.run.series.wall_c) ==
          doctest::Approx(highest(simulate_stagnation(standing()).run.series.wall_c)));
    CHECK(
        std::any_of(still.run.events.begin(), still.run.events.end(), [](const SwitchEvent& event) {
            return event.what == heatmatch::SwitchAction::cannot_open;
        }));
}

TEST_CASE(
    "the sunniest fourteen days of the south are in its own season, and a missing site is"
    " reported" *
    doctest::test_suite("numerical")) {
    Installation flat = demo();
    flat.site.tilt_deg = 5.0;
    flat.weather.reset();
    Installation south = flat;
    south.site.latitude_deg = -44.1;
    const int north_month = simulate_stagnation(standing(flat)).month;
    const int south_month = simulate_stagnation(standing(south)).month;
    CHECK(north_month >= 5);
    CHECK(north_month <= 7);
    CHECK((south_month >= 11 || south_month <= 1));
    Candidate lost = standing();
    lost.site.latitude_deg.reset();
    CHECK(holds(refusal_of([&] { (void)simulate_stagnation(lost); }), "latitude_deg"));
    lost.circuit.heat = nullptr;
    CHECK(holds(refusal_of([&] { (void)simulate_stagnation(lost); }), "describe the store"));
}
