#include "bench_months.hpp"
#include "refusal.hpp"

#include <cmath>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/setting/site.hpp"
#include "heatmatch/solar/monthly_sky.hpp"
#include "heatmatch/solar/monthly_weather.hpp"

using heatmatch::InvalidInput;
using heatmatch::MonthlyNormals;
using heatmatch::MonthlySky;
using heatmatch::Site;
using heatmatch::weather_from_months;

TEST_CASE("a sky seen from its own plane has the sums it was made from") {
    const MonthlySky sky(bench_normals(), bench_site());
    const std::vector<double> sums = sky.sun_hours();
    REQUIRE(sums.size() == 12);
    for (std::size_t month = 0; month < 12; ++month)
        CHECK(sums[month] == doctest::Approx(bench_normals().sun_hours[month]).epsilon(1e-9));
    CHECK(sky.weather() == weather_from_months(bench_normals(), bench_site()));
}

TEST_CASE("seen from another plane and back it is the same sky") {
    const MonthlySky sky(bench_normals(), bench_site());
    for (const double tilt : {0.0, 30.0, 90.0}) {
        MonthlyNormals turned = bench_normals();
        turned.sun_hours = sky.sun_hours(tilt, 150.0);
        Site site = bench_site();
        site.tilt_deg = tilt;
        site.azimuth_deg = 150.0;
        const std::vector<double> back = MonthlySky(turned, site).sun_hours(60.0, 180.0);
        for (std::size_t month = 0; month < 12; ++month)
            CHECK(back[month] == doctest::Approx(bench_normals().sun_hours[month]).epsilon(1e-6));
    }
}

// common practice, no source: steep panels win in winter, flat ones in summer.
TEST_CASE("steep panels win in winter, flat ones in summer") {
    const MonthlySky sky(bench_normals(), bench_site());
    const auto flat = sky.sun_hours(0.0);
    const auto upright = sky.sun_hours(90.0);
    CHECK(upright[11] > 1.4 * flat[11]);
    CHECK(flat[5] > 1.8 * upright[5]);
}

TEST_CASE("a flat plane has no azimuth") {
    const MonthlySky sky(bench_normals(), bench_site());
    const auto south = sky.sun_hours(0.0, 180.0);
    const auto west = sky.sun_hours(0.0, 270.0);
    for (std::size_t month = 0; month < 12; ++month)
        CHECK(south[month] == doctest::Approx(west[month]).epsilon(1e-9));
}

TEST_CASE("a plane that is none is refused") {
    const MonthlySky sky(bench_normals(), bench_site());
    const auto refusal = [&](double tilt, double azimuth) {
        return refusal_of<InvalidInput>([&] { static_cast<void>(sky.weather(tilt, azimuth)); });
    };
    CHECK(holds(refusal(91.0, 180.0), "site: tilt_deg = 91"));
    CHECK(holds(refusal(-1.0, 180.0), "site: tilt_deg = -1"));
    CHECK(holds(refusal(60.0, 361.0), "site: azimuth_deg = 361"));
    CHECK(holds(refusal(std::nan(""), 180.0), "site: tilt_deg = nan"));
}
