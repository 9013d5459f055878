#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
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
            CHECK(std::fabs(*coldest - low - 20.0) < 0.15);
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
