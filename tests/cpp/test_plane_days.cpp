#include "demo.hpp"

#include <algorithm>
#include <cmath>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/solar/clear_days.hpp"
#include "heatmatch/solar/plane_days.hpp"

using heatmatch::plane_days;
using heatmatch::Site;

namespace {

Site facing_site(double tilt_deg, double azimuth_deg) {
    Site site = demo().site;
    site.tilt_deg = tilt_deg;
    site.azimuth_deg = azimuth_deg;
    return site;
}

}  // namespace

// Source: the rows of a year of clear hours, whose warming is by the light before the glass.
TEST_CASE("a day of each month is that day of the year of clear hours") {
    const Site site = facing_site(60.0, 120.0);
    const auto days = plane_days(site);
    REQUIRE(days);
    const heatmatch::Weather year = heatmatch::clear_days(site);
    std::size_t row = 0;
    for (std::size_t month = 0; month < 12; ++month) {
        while (year.month[row] != month + 1) ++row;
        for (std::size_t hour = 0; hour < 24; ++hour) {
            CHECK(
                (*days)[month][hour] ==
                doctest::Approx(year.heating_irradiance_w_m2[row + 14 * 24 + hour]).epsilon(1e-12));
        }
    }
}

// Source: symmetry about true noon; the equation of time moves it by up to 16 minutes.
TEST_CASE("planes to the east and the west have the sun at mirrored hours") {
    const auto east = plane_days(facing_site(60.0, 90.0));
    const auto west = plane_days(facing_site(60.0, 270.0));
    REQUIRE(east);
    REQUIRE(west);
    for (const std::size_t month : {2U, 5U, 8U, 11U}) {
        const auto& of_east = (*east)[month];
        const auto& of_west = (*west)[month];
        const auto east_hour = std::max_element(of_east.begin(), of_east.end()) - of_east.begin();
        const auto west_hour = std::max_element(of_west.begin(), of_west.end()) - of_west.begin();
        CHECK(east_hour < 12);
        CHECK(std::abs(23 - west_hour - east_hour) <= 1);
        CHECK(of_east[static_cast<std::size_t>(east_hour)] ==
              doctest::Approx(of_west[static_cast<std::size_t>(west_hour)]).epsilon(0.05));
    }
}

TEST_CASE("a plane whose latitude, tilt or azimuth is not stated has no days") {
    const Site stated = facing_site(60.0, 90.0);
    Site site = stated;
    site.latitude_deg.reset();
    CHECK(!plane_days(site));
    site = stated;
    site.tilt_deg.reset();
    CHECK(!plane_days(site));
    site = stated;
    site.azimuth_deg.reset();
    CHECK(!plane_days(site));
    site.tilt_deg = 0.0;  // a flat plane faces no direction
    CHECK(plane_days(site));
    site.latitude_deg = 91.0;
    CHECK_THROWS_AS(static_cast<void>(plane_days(site)), heatmatch::InvalidInput);
}
