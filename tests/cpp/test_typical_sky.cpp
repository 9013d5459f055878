#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <utility>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/solar/monthly_weather.hpp"
#include "heatmatch/solar/typical_sky.hpp"

using heatmatch::MonthlyNormals;
using heatmatch::Site;
using heatmatch::typical_months;

namespace {

Site at_latitude(double latitude_deg, double tilt_deg) {
    return {.latitude_deg = latitude_deg,
            .tilt_deg = tilt_deg,
            .azimuth_deg = latitude_deg < 0.0 ? 0.0 : 180.0,
            .record_low_c = -40.0};
}

double of_year(const MonthlyNormals& months) {
    return 365.0 / 12.0 * std::accumulate(months.sun_hours.begin(), months.sun_hours.end(), 0.0);
}

}  // namespace

// Source: Matuska and Sourek 2017, table 2: yearly sun on a plane 45 degrees to the south
// [kWh/m2] and mean air [°C]; latitudes from memory.
TEST_CASE("nine towns lie within the band that a typical sky states") {
    struct Town {
        double latitude_deg;
        double air_c;
        double sun_kwh_m2;
    };
    const auto towns = std::to_array<Town>({{40.4, 13.9, 1864.0},
                                            {41.0, 14.1, 1805.0},
                                            {38.0, 17.6, 1696.0},
                                            {44.4, 15.8, 1637.0},
                                            {44.8, 12.7, 1448.0},
                                            {45.5, 11.6, 1342.0},
                                            {47.4, 9.1, 1237.0},
                                            {59.3, 5.3, 1232.0},
                                            {50.1, 7.9, 1115.0}});
    for (const Town& town : towns) {
        const auto months = typical_months(at_latitude(town.latitude_deg, 45.0), std::nullopt);
        REQUIRE(months);
        CAPTURE(town.latitude_deg);
        CHECK(std::fabs(of_year(*months) / town.sun_kwh_m2 - 1.0) < heatmatch::typical_sky_band);
        double mean_c = 0.0;
        for (std::size_t m = 0; m < 12; ++m) {
            mean_c += (months->temp_min_c[m] + months->temp_max_c[m]) / 24.0;
        }
        CHECK(std::fabs(mean_c - town.air_c) < heatmatch::typical_air_band_k);
    }
}

TEST_CASE("every latitude within the limit gives months that the library reads as weather") {
    for (const double latitude : {-60.0, -45.0, -20.0, 0.0, 15.0, 35.0, 55.0, 60.0}) {
        for (const double low : {-45.0, -20.0, 0.0, 10.0}) {
            Site site = at_latitude(latitude, 60.0);
            site.record_low_c = low;
            const auto months = typical_months(site, low);
            REQUIRE(months);
            CAPTURE(latitude);
            CAPTURE(low);
            heatmatch::check_monthly_normals(*months);
            heatmatch::check_record_low(site, *months);
            CHECK_NOTHROW(static_cast<void>(heatmatch::weather_from_months(*months, site)));
            const auto coldest =
                std::min_element(months->temp_min_c.begin(), months->temp_min_c.end());
            // January or July, by the hemisphere.
            if (latitude != 0.0)
                CHECK(coldest - months->temp_min_c.begin() == (latitude < 0 ? 6 : 0));
            CHECK(*coldest > low);
        }
    }
}

TEST_CASE("winter is darker than summer, and no latitude or one beyond the relation has no sky") {
    const auto north = typical_months(at_latitude(44.0, 0.0), std::nullopt);
    const auto south = typical_months(at_latitude(-44.0, 0.0), std::nullopt);
    REQUIRE(north);
    REQUIRE(south);
    CHECK(north->sun_hours[11] < 0.4 * north->sun_hours[5]);
    CHECK(south->sun_hours[5] < 0.4 * south->sun_hours[11]);
    CHECK_FALSE(typical_months(at_latitude(61.0, 0.0), std::nullopt));
    CHECK_FALSE(typical_months(at_latitude(-61.0, 0.0), std::nullopt));
    CHECK_FALSE(typical_months(Site{}, std::nullopt));
}

// Source: WMO climate normals 1991-2020 of the cities, rounded, from memory; record lows from
// memory. Denver stands 1,600 m high. The relation was fitted to these cities: no independent
// check.
TEST_CASE("the air of ten cities lies within the band that a typical sky states") {
    struct City {
        const char* name;
        double latitude_deg;
        double record_low_c;
        std::array<double, 2> january_c;  // mean daily minimum and maximum
        std::array<double, 2> april_c;
        std::array<double, 2> july_c;
        std::array<double, 2> october_c;
    };
    const auto cities = std::to_array<City>({
        {"Zurich", 47.4, -24.2, {-1.4, 3.4}, {5.0, 14.8}, {14.3, 24.7}, {6.9, 14.3}},
        {"Vienna", 48.2, -25.8, {-0.8, 3.9}, {6.2, 16.3}, {16.4, 27.3}, {7.0, 15.1}},
        {"London", 51.5, -13.2, {2.7, 8.4}, {5.9, 15.3}, {14.2, 23.9}, {9.0, 15.9}},
        {"Paris", 48.9, -23.9, {3.2, 7.6}, {7.3, 16.9}, {16.2, 26.1}, {9.6, 16.5}},
        {"Minneapolis", 44.9, -41.0, {-13.4, -4.7}, {2.7, 13.7}, {18.5, 28.6}, {4.6, 14.4}},
        {"Winnipeg", 49.9, -45.0, {-20.9, -10.9}, {-2.3, 10.6}, {13.5, 25.9}, {-0.5, 10.7}},
        {"Denver", 39.7, -34.0, {-7.6, 7.0}, {1.5, 16.6}, {15.7, 32.2}, {2.4, 18.3}},
        {"Seattle", 47.4, -17.8, {3.2, 8.9}, {6.3, 15.2}, {14.1, 26.6}, {8.8, 15.7}},
        {"Moscow", 55.8, -42.1, {-8.7, -3.9}, {2.6, 11.8}, {14.4, 24.3}, {3.1, 9.0}},
        {"Melbourne", -37.8, -2.8, {16.1, 27.0}, {12.0, 20.7}, {7.5, 14.2}, {10.5, 20.1}},
    });
    for (const City& city : cities) {
        const auto months = typical_months(at_latitude(city.latitude_deg, 45.0), city.record_low_c);
        const auto guessed = typical_months(at_latitude(city.latitude_deg, 45.0), std::nullopt);
        REQUIRE(months);
        REQUIRE(guessed);
        for (const auto& [month, normal] :
             {std::pair(0U, city.january_c), std::pair(3U, city.april_c),
              std::pair(6U, city.july_c), std::pair(9U, city.october_c)}) {
            CAPTURE(city.name);
            CAPTURE(month);
            CAPTURE(months->temp_min_c[month]);
            CAPTURE(months->temp_max_c[month]);
            CHECK(std::fabs(months->temp_min_c[month] - normal[0]) < heatmatch::typical_air_band_k);
            CHECK(std::fabs(months->temp_max_c[month] - normal[1]) < heatmatch::typical_air_band_k);
            constexpr double without_low_k = heatmatch::typical_air_band_without_low_k;
            CHECK(std::fabs(guessed->temp_min_c[month] - normal[0]) < without_low_k);
            CHECK(std::fabs(guessed->temp_max_c[month] - normal[1]) < without_low_k);
        }
    }
}

TEST_CASE("a lower record low makes winters colder and leaves the summer as it is") {
    const auto mild = typical_months(at_latitude(47.0, 45.0), -12.0);
    const auto hard = typical_months(at_latitude(47.0, 45.0), -40.0);
    REQUIRE(mild);
    REQUIRE(hard);
    CHECK(hard->temp_min_c[0] < mild->temp_min_c[0] - 10.0);
    CHECK(hard->temp_max_c[6] == doctest::Approx(mild->temp_max_c[6]).epsilon(0.02));
}
