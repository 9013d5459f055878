#include "refusal.hpp"

#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/solar/clear_days.hpp"
#include "heatmatch/solar/clear_sky.hpp"

using heatmatch::clear_days;
using heatmatch::InvalidInput;
using heatmatch::MonthlyNormals;
using heatmatch::Site;
using heatmatch::UnitSystem;
using heatmatch::Weather;

namespace {

Site flat_equator() {
    return {.latitude_deg = 0.0,
            .longitude_deg = 30.0,
            .elevation_m = 0.0,
            .tilt_deg = 0.0,
            .record_low_c = 5.0,
            .albedo = 0.2};
}

}  // namespace

TEST_CASE("cloudless days are the clear sky of the place, hour by hour") {
    const Weather weather = clear_days(flat_equator());
    REQUIRE(weather.size() == 8760);
    // Noon of the equinox on the equator: the sun is overhead within a few degrees.
    const std::size_t noon = (31 + 28 + 20) * 24 + 12;
    const double overhead = heatmatch::ineichen_clear_sky(
                                8.0, {.linke_turbidity = 3.0, .extraterrestrial_w_m2 = 1374.0})
                                .ghi_w_m2;
    CHECK(weather.heating_irradiance_w_m2[noon] == doctest::Approx(overhead).epsilon(0.01));
    CHECK(weather.irradiance_w_m2[noon] == weather.clear_w_m2[noon]);
    CHECK(weather.irradiance_w_m2[noon - 12] == 0.0);
    for (std::size_t month = 0; month < 12; ++month) {
        CHECK(weather.days[month] == doctest::Approx(heatmatch::days_of_month[month]));
    }
}

TEST_CASE("hazy months are darker") {
    Site site = flat_equator();
    const Weather usual = clear_days(site);
    site.linke_turbidity.assign(12, 3.0);
    site.linke_turbidity[6] = 6.0;
    const Weather hazy = clear_days(site);
    const std::size_t january = 12;
    const std::size_t july = (181 + 10) * 24 + 12;
    CHECK(hazy.irradiance_w_m2[january] == doctest::Approx(usual.irradiance_w_m2[january]));
    CHECK(hazy.irradiance_w_m2[july] < 0.95 * usual.irradiance_w_m2[july]);
}

TEST_CASE("the air of clear days is given or assumed") {
    const auto told = [](const Weather& weather) {
        for (const auto& assumption : weather.assumed) {
            if (assumption.field == "air_c") return assumption.value.text(UnitSystem::us);
        }
        return std::string("not told");
    };
    const Weather assumed = clear_days(flat_equator());
    CHECK(assumed.base_c[4321] == 10.0);
    CHECK(told(assumed) == "50 °F");
    MonthlyNormals normals{.sun_hours = std::vector<double>(12, 5.0),
                           .temp_min_c = std::vector<double>(12, 20.0),
                           .temp_max_c = std::vector<double>(12, 30.0)};
    const Weather given = clear_days(flat_equator(), normals);
    CHECK(given.base_c[15] > 29.0);
    CHECK(given.base_c[5] < 21.0);
    CHECK(told(given) == "not told");
    normals.temp_min_c[0] = 40.0;
    CHECK(holds(
        refusal_of<InvalidInput>([&] { static_cast<void>(clear_days(flat_equator(), normals)); }),
        "temp_min_c[0]"));
}
