#include "bench_months.hpp"

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/solar/clear_days.hpp"
#include "heatmatch/solar/monthly_sky.hpp"
#include "heatmatch/solar/rear_light.hpp"
#include "heatmatch/solar/sky.hpp"

using heatmatch::on_plane;
using heatmatch::Weather;

namespace {

const Weather& year() {
    static const Weather made = heatmatch::MonthlySky(bench_normals(), bench_site()).weather();
    return made;
}

}  // namespace

TEST_CASE("the sky of twelve months gives the site's plane its own weather, bit for bit") {
    const heatmatch::Site site = bench_site();
    REQUIRE(year().sky.made_from);
    const Weather again = on_plane(year(), *site.tilt_deg, site.azimuth_deg.value_or(180.0));
    CHECK(again.irradiance_w_m2 == year().irradiance_w_m2);
    CHECK(again.heating_irradiance_w_m2 == year().heating_irradiance_w_m2);
    CHECK(again.rear_w_m2 == year().rear_w_m2);
    CHECK(again.days == year().days);
    CHECK(again.first_hour == year().first_hour);
}

// Source: arithmetic: one sky has one weather on a plane, by either way to it.
TEST_CASE("another plane under a kept sky is the plane that the twelve months give") {
    const heatmatch::MonthlySky sky(bench_normals(), bench_site());
    CHECK(on_plane(year(), 30.0, 90.0) == sky.weather(30.0, 90.0));
}

TEST_CASE("cloudless days keep their sky") {
    heatmatch::Site site = bench_site();
    const Weather days = heatmatch::clear_days(site);
    site.tilt_deg = 20.0;
    site.azimuth_deg = 250.0;
    CHECK(on_plane(days, 20.0, 250.0).irradiance_w_m2 ==
          heatmatch::clear_days(site).irradiance_w_m2);
}

TEST_CASE("the weather of a plane is made once and kept") {
    const auto& sky = *year().sky.made_from;
    CHECK(sky.on_plane(25.0, 100.0).get() == sky.on_plane(25.0, 100.0).get());
}

TEST_CASE("weather without a sky is refused on another plane in one sentence") {
    const Weather rear = heatmatch::with_rear_irradiance(year(), 0.7);
    CHECK_THROWS_WITH_AS(static_cast<void>(on_plane(rear, 30.0, 90.0)),
                         doctest::Contains("from ghi, dni and dhi"), heatmatch::InvalidInput);
    CHECK_THROWS_WITH_AS(static_cast<void>(on_plane(year(), 130.0, 90.0)),
                         doctest::Contains("tilt_deg"), heatmatch::InvalidInput);
}
