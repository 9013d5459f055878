#include "operation_bench.hpp"
#include "refusal.hpp"
#include "within.hpp"

#include <algorithm>
#include <numeric>

#include <doctest/doctest.h>

#include "heatmatch/operation/days/day_weather.hpp"
#include "heatmatch/solar/clear_days.hpp"
#include "heatmatch/solar/observed_weather.hpp"

using namespace heatmatch;

TEST_CASE("a span of days comes out of a year in the order of time") {
    const DayWeather week = day_weather(demo_year(), {.month = 1, .days = 7});
    CHECK(week.size() == 168);
    CHECK(week.hours() == 168.0);
    CHECK(week.first_hour == 0.0);
    CHECK(week.hour_of_day(25.5) == 1.5);
    CHECK(std::all_of(week.month.begin(), week.month.end(), [](auto m) { return m == 1; }));
    CHECK(week.irradiance_w_m2[0] == 0.0);  // midnight
    CHECK(week.irradiance_w_m2[12] > 0.0);  // noon
    const DayWeather whole = day_weather(demo_year(), {.month = 2});
    CHECK(whole.size() == 28 * 24);
    CHECK(day_weather(demo_year()).size() == 8760);
    const DayWeather round = day_weather(demo_year(), {.month = 12, .days = 40});
    CHECK(round.month.front() == 12);
    CHECK(round.month.back() == 1);
}

TEST_CASE("air between the month's low and high, shifted where stated") {
    const DayWeather january = day_weather(demo_year(), {.month = 1});
    const auto [low, high] = std::minmax_element(january.air_c.begin(), january.air_c.end());
    CHECK(*low >= -13.5);
    CHECK(*high <= -2.5);
    const DayWeather cold = day_weather(demo_year(), {.month = 1, .days = 2, .air_shift_k = -8.0});
    CHECK(within_abs(cold.air_c[5], january.air_c[5] - 8.0, 1e-12));
    CHECK(holds(cold.remarks.back(), "8 K colder"));
    CHECK(holds(cold.remarks.back().text(UnitSystem::us), "14.4 °F colder"));
}

TEST_CASE("snow on the panels reduces the time, not the day") {
    Site site = demo().site;
    site.snow_cover_pct = std::vector<double>(12, 25.0);
    const DayWeather day = day_weather(weather_from_months(*demo().weather, site), {.days = 1});
    CHECK(day.hours() == 24.0);
    CHECK(within(day.bare_share[12], 0.75, 1e-12));
}

TEST_CASE("observed weather begins at its own hour of the sun") {
    std::vector<double> times(48);
    for (std::size_t i = 0; i < times.size(); ++i) {
        times[i] = 1735689600.0 + 3600.0 * static_cast<double>(i);  // 2025-01-01 00:00 UTC
    }
    const std::vector<double> dni(48, 0.0);
    std::vector<double> dhi(48, 0.0);
    for (std::size_t i = 16; i < 20; ++i) dhi[i] = dhi[i + 24] = 100.0;
    const std::vector<double> air(48, 3.0);
    Site site = demo().site;
    site.longitude_deg = -75.0;  // five hours behind
    const Weather weather = weather_from_observations(
        {.unix_time_s = times, .dni_w_m2 = dni, .dhi_w_m2 = dhi, .air_c = air}, site);
    CHECK(within_abs(day_weather(weather).first_hour, 19.0, 1e-9));
    // A gap leaves no order of time to live through.
    times[47] += 7200.0;
    const Weather gap = weather_from_observations(
        {.unix_time_s = times, .dni_w_m2 = dni, .dhi_w_m2 = dhi, .air_c = air}, site);
    CHECK_FALSE(gap.first_hour);
    CHECK(holds(refusal_of([&] { (void)day_weather(gap); }), "without a gap"));
}

TEST_CASE("spans that the weather does not have are refused") {
    CHECK(holds(refusal_of([] { (void)day_weather(demo_year(), {.month = 13}); }), "month"));
    CHECK(holds(refusal_of([] { (void)day_weather(demo_year(), {.days = -1}); }), "days"));
    CHECK(holds(refusal_of([] { (void)day_weather(demo_year(), {.air_shift_k = 100.0}); }),
                "air_shift_k"));
    const std::vector<double> sun{0.0, 500.0};
    const std::vector<double> cell{5.0, 20.0};
    const Weather cells = weather_from_plane(sun, cell, 1.0);
    CHECK(holds(refusal_of([&] { (void)day_weather(cells); }), "without the air"));
}

// Source: sums of the rows themselves.
TEST_CASE("a week that is darker or brighter than its month reports both") {
    const auto a_day = [](const DayWeather& days) {
        return std::accumulate(days.irradiance_w_m2.begin(), days.irradiance_w_m2.end(), 0.0) *
               days.step_h / 1000.0 / (days.hours() / 24.0);
    };
    Weather year = demo_year();
    const double month = a_day(day_weather(year, {.month = 1}));
    for (const double times : {0.5, 1.0, 3.0}) {
        Weather other = year;
        for (std::size_t row = 0; row < 24; ++row) {
            other.irradiance_w_m2[row] = times * month * 1000.0 / 24.0;
        }
        const DayWeather day = day_weather(other, {.month = 1, .days = 1});
        const double mean = a_day(day_weather(other, {.month = 1}));
        const std::string said = day.sun_of_month.text();
        if (times == 1.0) {
            CHECK(said.empty());
            continue;
        }
        CAPTURE(said);
        CHECK(said.find(times < 1.0 ? "darker than" : "brighter than") != std::string::npos);
        CHECK(said.find(format_number(times * month, 2) + " kWh/m2 a day") != std::string::npos);
        CHECK(said.find("not " + format_number(mean, 2) + " kWh/m2") != std::string::npos);
    }
    CHECK(day_weather(year, {.month = 1}).sun_of_month.empty());
    CHECK(day_weather(year, {.month = 1, .days = 59}).sun_of_month.empty());
}
