#include <cmath>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/match/candidate/space_need.hpp"

using heatmatch::needed_kwh_per_day;
using heatmatch::SpaceBalance;
using heatmatch::Weather;

namespace {

/// A day of January at 0 °C and one of July at 20 °C, hour by hour.
Weather two_days() {
    Weather weather{.first_hour = 0.0};
    for (int hour = 0; hour < 48; ++hour) {
        weather.irradiance_w_m2.push_back(0.0);
        weather.heating_irradiance_w_m2.push_back(0.0);
        weather.base_c.push_back(hour < 24 ? 0.0 : 20.0);
        weather.hours.push_back(1.0);
        weather.month.push_back(hour < 24 ? 1 : 7);
    }
    return weather;
}

}  // namespace

// Source: Q = UA dT t by hand: 100 W/K x 5 K x 24 h = 12 kWh.
TEST_CASE("the heat that a target needs is the loss to the colder outside") {
    const SpaceBalance space{.cover_w_k = 90.0, .air_w_k = 10.0, .target_c = 5.0};
    const std::vector<int> january{1};
    const std::vector<int> july{7};
    const std::vector<int> none;
    CHECK(needed_kwh_per_day(space, two_days(), january).value() == doctest::Approx(12.0));
    CHECK(needed_kwh_per_day(space, two_days(), july).value() == doctest::Approx(0.0));
    // A day above the target gives nothing back.
    CHECK(needed_kwh_per_day(space, two_days(), none).value() == doctest::Approx(6.0));
}

TEST_CASE("without a target, covers or the air of every hour it is not known") {
    const SpaceBalance space{.cover_w_k = 90.0, .air_w_k = 10.0, .target_c = 5.0};
    const std::vector<int> none;
    SpaceBalance untold = space;
    untold.target_c.reset();
    CHECK_FALSE(needed_kwh_per_day(untold, two_days(), none));
    CHECK_FALSE(
        needed_kwh_per_day(SpaceBalance{.air_w_k = 10.0, .target_c = 5.0}, two_days(), none));
    Weather sunny = two_days();
    sunny.first_hour.reset();
    CHECK_FALSE(needed_kwh_per_day(space, sunny, none));
}
