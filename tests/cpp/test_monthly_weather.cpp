#include "bench_months.hpp"
#include "long_run.hpp"
#include "refusal.hpp"

#include <cmath>
#include <limits>
#include <numeric>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/setting/site.hpp"
#include "heatmatch/solar/monthly_weather.hpp"

using heatmatch::InvalidInput;
using heatmatch::MonthlyNormals;
using heatmatch::Site;
using heatmatch::Weather;
using heatmatch::weather_from_months;

namespace {

std::string months_refusal(const MonthlyNormals& normals, const Site& site = bench_site()) {
    return refusal_of<InvalidInput>([&] { static_cast<void>(weather_from_months(normals, site)); });
}

/// Mean daily sum before the glass; without wind that warms the panels.
double daily_sum(const Weather& weather, std::size_t month) {
    double sum = 0.0;
    for (std::size_t row = 0; row < weather.size(); ++row) {
        if (weather.month[row] == month + 1) sum += weather.heating_irradiance_w_m2[row] / 1000.0;
    }
    return sum / heatmatch::days_of_month[month];
}

}  // namespace

TEST_CASE("the hours of each month sum to its peak sun hours on the plane") {
    const MonthlyNormals normals = bench_normals();
    const Weather weather = weather_from_months(normals, bench_site());
    REQUIRE(weather.size() == 8760);
    for (std::size_t month = 0; month < 12; ++month) {
        CHECK(daily_sum(weather, month) == doctest::Approx(normals.sun_hours[month]).epsilon(1e-9));
        CHECK(weather.days[month] == doctest::Approx(heatmatch::days_of_month[month]));
    }
    CHECK(std::accumulate(weather.hours.begin(), weather.hours.end(), 0.0) ==
          doctest::Approx(8760.0));
    CHECK(weather.has_cloud_band());
}

TEST_CASE("so they do on any plane of any place") {
    MonthlyNormals normals = bench_normals();
    int drawn = 0;
    for (const double latitude : {-55.0, -34.0, 0.0, 27.0, 55.0}) {
        for (const double tilt : {0.0, 90.0}) {
            for (const double azimuth : {0.0, 90.0, 180.0}) {
                if (in_a_slow_build() && ++drawn % 5 != 1) continue;
                Site site = bench_site();
                site.latitude_deg = latitude;
                site.tilt_deg = tilt;
                site.azimuth_deg = azimuth;
                normals.sun_hours.assign(12, 0.2);
                const Weather weather = weather_from_months(normals, site);
                for (std::size_t month = 0; month < 12; ++month) {
                    CHECK(daily_sum(weather, month) == doctest::Approx(0.2).epsilon(1e-9));
                }
            }
        }
    }
}

TEST_CASE("the air is between the means of low and high, coldest near sunrise") {
    const MonthlyNormals normals = bench_normals();
    const Weather weather = weather_from_months(normals, bench_site());
    double coldest = 99.0;
    double warmest = -99.0;
    std::size_t coldest_hour = 0;
    std::size_t warmest_hour = 0;
    for (std::size_t hour = 0; hour < 24; ++hour) {
        const double air = weather.base_c[hour];
        if (air < coldest) coldest_hour = hour;
        if (air > warmest) warmest_hour = hour;
        coldest = std::min(coldest, air);
        warmest = std::max(warmest, air);
    }
    CHECK(coldest == doctest::Approx(-13.0).epsilon(0.05));
    CHECK(warmest == doctest::Approx(-3.0).epsilon(0.2));
    CHECK(coldest_hour >= 3);
    CHECK(coldest_hour <= 7);
    CHECK(warmest_hour >= 13);
    CHECK(warmest_hour <= 16);
}

TEST_CASE("days of a month differ: some are dark, some nearly clear") {
    const Weather weather = weather_from_months(bench_normals(), bench_site());
    double darkest = 2000.0;
    double brightest = 0.0;
    for (std::size_t day = 59; day < 90; ++day) {  // March
        const double noon = weather.irradiance_w_m2[day * 24 + 11];
        darkest = std::min(darkest, noon);
        brightest = std::max(brightest, noon);
        CHECK(noon <= heatmatch::brightest_plane_w_m2);
    }
    CHECK(darkest < 150.0);
    CHECK(brightest > 850.0);
}

TEST_CASE("more sun than the clearest sky gives is refused with the most that is possible") {
    MonthlyNormals normals = bench_normals();
    normals.sun_hours[11] = 9.5;
    const std::string message = months_refusal(normals);
    CHECK(holds(message, "weather: sun_hours[11] (December) = 9.5 kWh/m2 must be <= "));
    CHECK(holds(message, "the sum under the clearest sky on this plane"));
    // Its own figure is accepted, rounded down.
    const std::size_t at = message.find("<= ") + 3;
    normals.sun_hours[11] = std::stod(message.substr(at)) - 0.01;
    CHECK(months_refusal(normals) == "(accepted)");
}

TEST_CASE("a polar night has no sun, and a sum for it is refused") {
    MonthlyNormals normals = bench_normals();
    Site site = bench_site();
    site.latitude_deg = 75.0;
    CHECK(holds(months_refusal(normals, site),
                "sun_hours[0] (January) = 2.6 kWh/m2 must be <= 0 kWh/m2"));
    for (const std::size_t month : {0U, 1U, 9U, 10U, 11U}) normals.sun_hours[month] = 0.0;
    const Weather weather = weather_from_months(normals, site);
    CHECK(daily_sum(weather, 0) == 0.0);
    CHECK(daily_sum(weather, 5) == doctest::Approx(5.0).epsilon(1e-9));
}

TEST_CASE("values that are not given are refused or listed") {
    MonthlyNormals normals = bench_normals();
    normals.sun_hours.pop_back();
    CHECK(holds(months_refusal(normals), "sun_hours = 11 values"));
    normals.sun_hours.assign(12, 0.0);
    CHECK(holds(months_refusal(normals), "0 kWh/m2 in every month"));
    normals.sun_hours[3] = std::numeric_limits<double>::quiet_NaN();
    CHECK(holds(months_refusal(normals), "sun_hours"));
    normals = bench_normals();
    Site site = bench_site();
    site.tilt_deg.reset();
    CHECK(holds(months_refusal(normals, site), "site: tilt_deg = (missing)"));
    std::size_t told = 0;
    for (const auto& assumption : weather_from_months(normals, bench_site()).assumed) {
        if (assumption.field == "wind_m_s" || assumption.field == "hours") ++told;
    }
    CHECK(told == 2);
}

TEST_CASE("snow on the panels reduces the time of its months only") {
    Site site = bench_site();
    const Weather bare = weather_from_months(bench_normals(), site);
    site.snow_cover_pct.assign(12, 0.0);
    site.snow_cover_pct[0] = 50.0;
    const Weather snowy = weather_from_months(bench_normals(), site);
    for (const std::size_t hour : {12U, 5000U}) {
        CHECK(snowy.hours[hour] == (hour < 744 ? 0.5 : 1.0));
        CHECK(snowy.irradiance_w_m2[hour] == bare.irradiance_w_m2[hour]);
    }
    CHECK(snowy.days == bare.days);
}

TEST_CASE("the sun's own time needs no longitude") {
    Site site = bench_site();
    site.longitude_deg.reset();
    const Weather without = weather_from_months(bench_normals(), site);
    const Weather with = weather_from_months(bench_normals(), bench_site());
    CHECK(without.irradiation_kwh_m2() == doctest::Approx(with.irradiation_kwh_m2()).epsilon(1e-3));
    CHECK(without.days == with.days);
}
