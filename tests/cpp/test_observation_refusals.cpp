#include "june_day.hpp"

#include <limits>
#include <vector>

#include <doctest/doctest.h>

using heatmatch::Observations;
using heatmatch::Weather;
using heatmatch::weather_from_observations;

TEST_CASE("a reading that cannot be is named with its row and time") {
    constexpr double nan = std::numeric_limits<double>::quiet_NaN();
    const auto with = [](std::vector<double> Day::*list, double value) {
        Day day;
        (day.*list)[12] = value;
        return refusal({.unix_time_s = day.times,
                        .ghi_w_m2 = day.ghi,
                        .dni_w_m2 = day.dni,
                        .dhi_w_m2 = day.dhi,
                        .air_c = day.air,
                        .wind_m_s = day.wind});
    };
    CHECK(with(&Day::ghi, nan) ==
          "weather: ghi_w_m2[12] at 2025-06-21 12:00 UTC = not a number must be a finite number; "
          "omit the row, or fill the gap from its neighbors");
    CHECK(holds(with(&Day::ghi, 1701.0), "ghi_w_m2[12] at 2025-06-21 12:00 UTC = 1701 W/m2"));
    CHECK(holds(with(&Day::dni, 1401.0), "dni_w_m2[12] at 2025-06-21 12:00 UTC"));
    CHECK(holds(with(&Day::ghi, -11.0), ">= -10 W/m2 and <= 1700 W/m2"));
    CHECK(holds(with(&Day::dhi, -11.0), "dhi_w_m2[12]"));
    CHECK(holds(with(&Day::air, 293.15), "give it in °C, not in K or °F"));
    CHECK(holds(with(&Day::air, nan), "air_c[12] at 2025-06-21 12:00 UTC"));
    CHECK(holds(with(&Day::wind, -1.0), "wind_m_s[12]"));
    CHECK(holds(with(&Day::wind, 81.0), "<= 80 m/s"));
}

TEST_CASE("times that do not rise, or steps too long or short, are refused") {
    Day day;
    std::swap(day.times[3], day.times[4]);
    CHECK(holds(refusal(day.global()),
                "unix_time_s[4] = 2025-06-21 03:00 UTC must be later than "
                "the row before, 2025-06-21 04:00 UTC; sort the rows"));
    day = Day();
    day.times[4] = day.times[3];
    CHECK(holds(refusal(day.global()), "remove the duplicate row"));
    day = Day();
    day.times[0] = std::numeric_limits<double>::quiet_NaN();
    CHECK(holds(refusal(day.global()), "unix_time_s[0] = not a number"));
    day = Day();
    for (double& time : day.times) time *= 1000.0;
    CHECK(holds(refusal(day.global()), "count seconds since 1970-01-01 00:00 UTC"));
    CHECK(holds(refusal(Day(2.0 * hour_s).global()), "steps of 7200 s"));
    CHECK(holds(refusal(Day(30.0).global()), "average to minutes"));
    CHECK(refusal(Day(60.0).global()) == "(accepted)");
    Day one;
    while (one.times.size() > 1) one.drop(1);
    CHECK(holds(refusal(one.global()), "1 rows must be 2 rows or more"));
}

TEST_CASE("missing lists are requested by name") {
    const Day day;
    Observations given = day.global();
    given.air_c = {};
    CHECK(holds(refusal(given), "air_c = (missing)"));
    given = day.parts();
    given.dhi_w_m2 = {};
    CHECK(holds(refusal(given), "ghi_w_m2 = (missing)"));
    given = day.global();
    given.ghi_w_m2 = given.ghi_w_m2.subspan(1);
    CHECK(holds(refusal(given), "ghi_w_m2 = 23 values must be 24 values"));
    given = day.global();
    given.label = 2.0;
    CHECK(holds(refusal(given), "label = 2"));
}

TEST_CASE("sunlight at night is a wrong time zone") {
    const Day shifted(hour_s, june_s + 8.0 * hour_s);
    CHECK(holds(refusal(shifted.global()), "of the sunlight while the sun is down"));
    Day day;
    day.ghi[1] = 60.0;
    const Weather weather = weather_from_observations(day.global(), flat_site());
    CHECK(says(weather, "1 rows above 50 W/m2 while the sun is down"));
    Day dark;
    for (double& ghi : dark.ghi) ghi = -1.0;
    CHECK(holds(refusal(dark.global()), "no sun in 24 rows"));
}
