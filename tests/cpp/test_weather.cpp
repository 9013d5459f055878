#include "refusal.hpp"

#include <cmath>
#include <limits>
#include <numeric>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/solar/weather.hpp"

using heatmatch::InvalidInput;
using heatmatch::split_by_cloud;
using heatmatch::Weather;
using heatmatch::weather_from_plane;

namespace {

/// The message with which rows of one hour are refused.
std::string plane_refusal(const std::vector<double>& sun, const std::vector<double>& cell,
                          double hours_per_row = 1.0, const std::vector<std::uint8_t>& month = {}) {
    return refusal_of<InvalidInput>(
        [&] { static_cast<void>(weather_from_plane(sun, cell, hours_per_row, month)); });
}

double sum(const std::vector<double>& list) {
    return std::accumulate(list.begin(), list.end(), 0.0);
}

/// Three hours: half clouded, brighter than clear, darker than overcast.
Weather clouded() {
    const std::vector<double> sun{500.0, 900.0, 90.0};
    const std::vector<double> cell{30.0, 40.0, 10.0};
    Weather weather = weather_from_plane(sun, cell, 1.0, std::vector<std::uint8_t>{6, 6, 6});
    weather.clear_w_m2 = {800.0, 850.0, 400.0};
    weather.overcast_w_m2 = {200.0, 300.0, 100.0};
    return weather;
}

}  // namespace

TEST_CASE(
    "a month is covered from a quarter of its days on, and rows without nights have "
    "factor one") {
    std::vector<double> sun;
    std::vector<std::uint8_t> month;
    const auto days = [&](std::uint8_t m, int count, bool nights) {
        for (int day = 0; day < count; ++day) {
            for (int hour = 0; hour < (nights ? 24 : 9); ++hour) {
                sun.push_back(!nights || (hour > 7 && hour < 17) ? 500.0 : 0.0);
                month.push_back(m);
            }
        }
    };
    days(1, 31, true);
    days(2, 14, true);
    days(3, 2, true);
    days(4, 30, false);
    const std::vector<double> cells(sun.size(), 10.0);
    const auto cover =
        heatmatch::month_cover(heatmatch::weather_from_plane(sun, cells, 1.0, month));
    CHECK(cover[0].factor == doctest::Approx(1.0));
    CHECK(cover[1].share == doctest::Approx(0.5));
    CHECK(cover[1].factor == doctest::Approx(2.0));
    CHECK(!cover[2].covered());
    CHECK(!cover[3].has_nights);
    CHECK(cover[3].factor == 1.0);
    CHECK(!cover[4].covered());
}

TEST_CASE("lists of different lengths are refused by name") {
    heatmatch::Weather weather =
        heatmatch::weather_from_plane(std::vector<double>{500.0}, std::vector<double>{20.0}, 1.0);
    weather.hours.push_back(1.0);
    CHECK_THROWS_WITH(heatmatch::check_weather(weather), doctest::Contains("hours"));
    weather.hours.pop_back();
    weather.month.front() = 13;
    CHECK_THROWS_WITH(heatmatch::check_weather(weather), doctest::Contains("month[0]"));
}

TEST_CASE("weather from the plane keeps the sun, and the cells are as warm as given") {
    const Weather weather = weather_from_plane(std::vector<double>{0.0, 400.0, 800.0},
                                               std::vector<double>{5.0, 15.0, 35.0}, 0.5);
    CHECK(weather.size() == 3);
    CHECK(weather.irradiation_kwh_m2() == doctest::Approx(0.6));
    CHECK(weather.step_hours == 0.5);
    for (const double noct_c : {40.0, 45.0, 50.0}) {
        CHECK(weather.cell_temperature_c(2, noct_c) == 35.0);
    }
    CHECK(weather.month == std::vector<std::uint8_t>{0, 0, 0});
    CHECK(sum({weather.days.begin(), weather.days.end()}) == 0.0);
    CHECK_FALSE(weather.has_cloud_band());
    CHECK(weather.remarks.empty());
}

TEST_CASE("the sun that warms raises the cells by the panel's NOCT") {
    Weather weather =
        weather_from_plane(std::vector<double>{800.0}, std::vector<double>{20.0}, 1.0);
    weather.heating_irradiance_w_m2 = {800.0};
    // The definition of NOCT: 800 W/m2, 20 °C of air.
    CHECK(weather.cell_temperature_c(0, 45.0) == doctest::Approx(45.0));
    weather.heating_irradiance_w_m2 = {400.0};
    CHECK(weather.cell_temperature_c(0, 45.0) == doctest::Approx(32.5));
}

TEST_CASE("lists of unequal length are refused") {
    CHECK(plane_refusal({100.0, 200.0}, {10.0}) ==
          "weather: cell_temperature_c = 1 values must be 2 values, as plane_irradiance_w_m2 has; "
          "give both for the same moments");
    CHECK(holds(plane_refusal({100.0, 200.0}, {10.0, 10.0}, 1.0, {1}), "month = 1 values"));
}

TEST_CASE("a row that cannot be is named") {
    constexpr double nan = std::numeric_limits<double>::quiet_NaN();
    constexpr double infinite = std::numeric_limits<double>::infinity();
    CHECK(holds(plane_refusal({100.0, nan}, {10.0, 10.0}),
                "plane_irradiance_w_m2[1] = not a number"));
    CHECK(holds(plane_refusal({infinite}, {10.0}), "plane_irradiance_w_m2[0] = not a number"));
    CHECK(
        holds(plane_refusal({100.0, -30.0}, {10.0, 10.0}), "plane_irradiance_w_m2[1] = -30 W/m2"));
    CHECK(holds(plane_refusal({2000.0}, {10.0}), ">= -10 W/m2 and <= 1600 W/m2"));
    CHECK(holds(plane_refusal({100.0}, {nan}), "cell_temperature_c[0] = not a number"));
    CHECK(holds(plane_refusal({100.0}, {298.15}), "give it in °C, not in K or °F"));
    CHECK(holds(plane_refusal({100.0}, {10.0}, 1.0, {13}), "month[0] = 13"));
}

TEST_CASE("the hours of a row are above 0 and at most a day") {
    CHECK(holds(plane_refusal({100.0}, {10.0}, 0.0), "hours_per_row = 0 h"));
    CHECK(holds(plane_refusal({100.0}, {10.0}, -1.0), "hours_per_row"));
    CHECK(holds(plane_refusal({100.0}, {10.0}, 60.0), "1 for hourly means, 1/60 for minutes"));
    CHECK(holds(plane_refusal({100.0}, {10.0}, std::numeric_limits<double>::quiet_NaN()),
                "hours_per_row"));
    CHECK(plane_refusal({100.0}, {10.0}, 24.0) == "(accepted)");
}

TEST_CASE("a night is not weather") {
    CHECK(holds(plane_refusal({0.0, 0.0}, {1.0, 1.0}), "no sun in 2 rows"));
    CHECK(holds(plane_refusal({-3.0, 0.0}, {1.0, 1.0}), "no sun in 2 rows"));
    CHECK(holds(plane_refusal({}, {}), "no sun in 0 rows"));
}

TEST_CASE("small negative readings of a night count as zero and are reported") {
    const Weather weather = weather_from_plane(std::vector<double>{-2.0, -10.0, 300.0},
                                               std::vector<double>(3, 5.0), 1.0);
    CHECK(weather.irradiance_w_m2 == std::vector<double>{0.0, 0.0, 300.0});
    REQUIRE(weather.remarks.size() == 1);
    CHECK(weather.remarks[0].text() == "2 small negative readings of the sun counted as 0");
}

TEST_CASE("a year of rows has the months of the calendar, with a remark") {
    for (const double hours_per_row : {0.5, 1.0}) {
        const auto rows = static_cast<std::size_t>(8760.0 / hours_per_row);
        const Weather weather = weather_from_plane(std::vector<double>(rows, 100.0),
                                                   std::vector<double>(rows, 10.0), hours_per_row);
        const auto row_of = [hours_per_row](double day) {
            return static_cast<std::size_t>(day * 24.0 / hours_per_row);
        };
        for (std::size_t m = 0; m < 12; ++m) {
            CHECK(weather.days[m] == doctest::Approx(heatmatch::days_of_month[m]));
        }
        CHECK(weather.month[row_of(31.0) - 1] == 1);
        CHECK(weather.month[row_of(31.0)] == 2);
        CHECK(weather.month[row_of(31.0 + 28.0)] == 3);
        CHECK(weather.month.back() == 12);
        REQUIRE(weather.assumed.size() == 1);
        CHECK(weather.assumed[0].field == "month");
    }
}

TEST_CASE("months that are given are taken, and their days counted") {
    const Weather weather =
        weather_from_plane(std::vector<double>(48, 100.0), std::vector<double>(48, 10.0), 1.0,
                           std::vector<std::uint8_t>(48, 12));
    CHECK(weather.days[11] == doctest::Approx(2.0));
    CHECK(weather.days[0] == 0.0);
    CHECK(weather.assumed.empty());
}

TEST_CASE("splitting by cloud keeps the sun, the hours and the temperatures") {
    const Weather whole = clouded();
    CHECK(whole.has_cloud_band());
    const Weather split = split_by_cloud(whole);
    REQUIRE(split.size() == 4);
    // 500 W/m2 is half of 800 and half of 200; the rows outside their skies stay whole.
    CHECK(split.irradiance_w_m2 == std::vector<double>{800.0, 200.0, 900.0, 90.0});
    CHECK(split.hours == std::vector<double>{0.5, 0.5, 1.0, 1.0});
    CHECK(split.base_c == std::vector<double>{30.0, 30.0, 40.0, 10.0});
    CHECK(split.month == std::vector<std::uint8_t>(4, 6));
    CHECK(split.irradiation_kwh_m2() == doctest::Approx(whole.irradiation_kwh_m2()));
    CHECK(sum(split.hours) == doctest::Approx(sum(whole.hours)));
    CHECK(split.days == whole.days);
    CHECK_FALSE(split.has_cloud_band());
}

// Source: by hand: 650 W/m2 is 800 for three quarters of the hour and 200 for one.
TEST_CASE("the sunny part of a row is the larger the nearer it is to the clear sky") {
    Weather weather = clouded();
    weather.irradiance_w_m2[0] = 650.0;
    const Weather split = split_by_cloud(weather);
    REQUIRE(split.size() == 4);
    CHECK(split.irradiance_w_m2[0] == 800.0);
    CHECK(split.hours[0] == doctest::Approx(0.75));
    CHECK(split.irradiance_w_m2[1] == 200.0);
    CHECK(split.hours[1] == doctest::Approx(0.25));
    CHECK(split.irradiation_kwh_m2() == doctest::Approx(weather.irradiation_kwh_m2()));
}

TEST_CASE("only long steps contain clouds") {
    Weather weather = clouded();
    weather.step_hours = 1.0 / 60.0;
    CHECK_FALSE(weather.has_cloud_band());
    weather.step_hours = 0.25;
    CHECK(weather.has_cloud_band());
}

TEST_CASE("splitting needs both skies") {
    const Weather bare =
        weather_from_plane(std::vector<double>{500.0}, std::vector<double>{20.0}, 1.0);
    const auto split = [](const Weather& weather) {
        return refusal_of<InvalidInput>([&] { static_cast<void>(split_by_cloud(weather)); });
    };
    CHECK(holds(split(bare), "clear_w_m2 = not known"));
    Weather half = clouded();
    half.overcast_w_m2.clear();
    CHECK(holds(split(half), "clear_w_m2 = not known"));
}

TEST_CASE("months of a season are 1 to 12, each once") {
    const auto check = [](const std::vector<int>& months) {
        return refusal_of<InvalidInput>([&] { heatmatch::check_months(months); });
    };
    CHECK(check({11, 12, 1, 2, 3}) == "(accepted)");
    CHECK(check({}) == "(accepted)");
    CHECK(holds(check({0}), "months = 0 must be 1 to 12, each once"));
    CHECK(holds(check({13}), "months = 13"));
    CHECK(holds(check({1, 2, 1}), "months = 1 (given twice)"));
}
