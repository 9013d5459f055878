#include "june_day.hpp"

#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/solar/cell_temperature.hpp"

using heatmatch::Observations;
using heatmatch::Site;
using heatmatch::Weather;
using heatmatch::weather_from_observations;

TEST_CASE("on a flat plane the global irradiance warms, and glass transmits less") {
    const Day day;
    Observations given = day.global();
    const Weather weather = weather_from_observations(given, flat_site());
    REQUIRE(weather.size() == 24);
    CHECK(weather.step_hours == doctest::Approx(1.0));
    CHECK(weather.days[5] == doctest::Approx(1.0));
    for (std::size_t row = 6; row < 18; ++row) {
        CHECK(weather.heating_irradiance_w_m2[row] == doctest::Approx(day.ghi[row]).epsilon(0.01));
        CHECK(weather.irradiance_w_m2[row] < weather.heating_irradiance_w_m2[row]);
        CHECK(weather.irradiance_w_m2[row] > 0.7 * weather.heating_irradiance_w_m2[row]);
    }
    CHECK(weather.base_c == day.air);
    CHECK(weather.month == std::vector<std::uint8_t>(24, 6));
    CHECK(weather.remarks.empty());
    CHECK(assumes(weather, "wind_m_s"));
    CHECK(assumes(weather, "dni_w_m2, dhi_w_m2"));
    CHECK_FALSE(assumes(weather_from_observations(day.parts(), flat_site()), "dni_w_m2, dhi_w_m2"));
    CHECK(weather.has_cloud_band());
}

TEST_CASE("the third part of the sun follows from the other two") {
    const Day day;
    const Weather from_parts = weather_from_observations(day.parts(), flat_site());
    // The global that those two make, as a flat plane sees it.
    std::vector<double> ghi = from_parts.heating_irradiance_w_m2;
    Observations without_diffuse{
        .unix_time_s = day.times, .ghi_w_m2 = ghi, .dni_w_m2 = day.dni, .air_c = day.air};
    Observations without_direct{
        .unix_time_s = day.times, .ghi_w_m2 = ghi, .dhi_w_m2 = day.dhi, .air_c = day.air};
    Site tilted = flat_site();
    tilted.tilt_deg = 50.0;
    tilted.azimuth_deg = 180.0;
    const Weather parts = weather_from_observations(day.parts(), tilted);
    for (const Observations& given : {without_diffuse, without_direct}) {
        const Weather weather = weather_from_observations(given, tilted);
        for (std::size_t row = 7; row < 17; ++row) {
            CHECK(weather.irradiance_w_m2[row] ==
                  doctest::Approx(parts.irradiance_w_m2[row]).epsilon(1e-6));
        }
    }
}

TEST_CASE("times may be the start, the middle or the end of a step") {
    const Day day;
    Observations starts = day.global();
    std::vector<double> later = day.times;
    for (double& time : later) time += hour_s;
    Observations ends = day.global();
    ends.unix_time_s = later;
    ends.label = 1.0;
    CHECK(weather_from_observations(starts, flat_site()).irradiance_w_m2 ==
          weather_from_observations(ends, flat_site()).irradiance_w_m2);
    std::vector<double> middles = day.times;
    for (double& time : middles) time += 0.5 * hour_s;
    ends.unix_time_s = middles;
    ends.label = 0.5;
    CHECK(weather_from_observations(starts, flat_site()).irradiance_w_m2 ==
          weather_from_observations(ends, flat_site()).irradiance_w_m2);
}

TEST_CASE("wind cools according to Faiman") {
    const Day day;
    Observations given = day.global();
    const Weather still = weather_from_observations(given, flat_site());
    std::vector<double> wind(24, 5.0);
    given.wind_m_s = wind;
    given.wind_height_m = heatmatch::panel_height_m;
    const Weather windy = weather_from_observations(given, flat_site());
    CHECK(windy.heating_irradiance_w_m2[12] ==
          doctest::Approx(still.heating_irradiance_w_m2[12] * heatmatch::wind_factor(5.0)));
    CHECK_FALSE(assumes(windy, "wind_m_s"));
    // By default the wind is that of a mast, and is lower at the panels.
    given.wind_height_m = heatmatch::mast_height_m;
    const Weather masted = weather_from_observations(given, flat_site());
    CHECK(masted.heating_irradiance_w_m2[12] > windy.heating_irradiance_w_m2[12]);
    CHECK(masted.heating_irradiance_w_m2[12] < still.heating_irradiance_w_m2[12]);
    CHECK(assumes(masted, "wind_m_s"));
    CHECK(masted == weather_from_observations({.unix_time_s = given.unix_time_s,
                                               .ghi_w_m2 = given.ghi_w_m2,
                                               .dni_w_m2 = given.dni_w_m2,
                                               .dhi_w_m2 = given.dhi_w_m2,
                                               .air_c = given.air_c,
                                               .wind_m_s = given.wind_m_s,
                                               .label = given.label},
                                              flat_site()));
}

TEST_CASE("snow reduces hours, dirt reduces light, and the days remain") {
    const Day day;
    Site site = flat_site();
    const Weather clean = weather_from_observations(day.global(), site);
    site.snow_cover_pct.assign(12, 25.0);
    site.soiling_pct.assign(12, 10.0);
    const Weather covered = weather_from_observations(day.global(), site);
    CHECK(covered.hours[12] == doctest::Approx(0.75));
    CHECK(covered.irradiance_w_m2[12] == doctest::Approx(0.9 * clean.irradiance_w_m2[12]));
    CHECK(covered.clear_w_m2[12] == doctest::Approx(0.9 * clean.clear_w_m2[12]));
    CHECK(covered.overcast_w_m2[12] == doctest::Approx(0.9 * clean.overcast_w_m2[12]));
    CHECK(covered.irradiation_kwh_m2() == doctest::Approx(0.675 * clean.irradiation_kwh_m2()));
    CHECK(covered.days == clean.days);
}

TEST_CASE("the albedo of the month reaches an upright plane") {
    const Day day;
    Site site = flat_site();
    site.tilt_deg = 90.0;
    site.azimuth_deg = 180.0;
    const Weather grass = weather_from_observations(day.global(), site);
    site.albedo_by_month.assign(12, 0.2);
    site.albedo_by_month[5] = 0.7;
    const Weather snow = weather_from_observations(day.global(), site);
    // Half of the ground is seen: 0.5 times the difference of albedo times the global.
    CHECK(snow.heating_irradiance_w_m2[12] - grass.heating_irradiance_w_m2[12] ==
          doctest::Approx(0.5 * 0.5 * day.ghi[12]).epsilon(0.001));
}

TEST_CASE("unstated values of the site are assumed and listed, or requested by name") {
    const Day day;
    Site site = flat_site();
    site.elevation_m.reset();
    site.albedo.reset();
    site.tilt_deg = 30.0;
    const Weather weather = weather_from_observations(day.global(), site);
    for (const char* field : {"elevation_m", "azimuth_deg", "albedo", "linke_turbidity"}) {
        CHECK(assumes(weather, field));
    }
    Site south = site;
    south.azimuth_deg = 180.0;
    CHECK(weather_from_observations(day.global(), south).irradiance_w_m2 ==
          weather.irradiance_w_m2);
    for (auto member : {&Site::latitude_deg, &Site::longitude_deg, &Site::tilt_deg}) {
        Site open = flat_site();
        (open.*member).reset();
        CHECK(holds(refusal(day.global(), open), "_deg = (missing) must be given"));
    }
    site.albedo = 3.0;
    CHECK(holds(refusal(day.global(), site), "site: albedo = 3"));
}

TEST_CASE("gaps are counted; the night in them is none") {
    Day day;
    day.drop(10);
    day.drop(10);
    const Weather weather = weather_from_observations(day.global(), flat_site());
    CHECK(says(weather, "1 gaps, 2 h missing"));
    CHECK(weather.days[5] == doctest::Approx(22.0 / 24.0));
    // Daylight rows of two days: the night between has passed, and was dark.
    Day two;
    const Day second(hour_s, june_s + 24.0 * hour_s);
    two.times.insert(two.times.end(), second.times.begin(), second.times.end());
    two.ghi.insert(two.ghi.end(), second.ghi.begin(), second.ghi.end());
    two.air.insert(two.air.end(), second.air.begin(), second.air.end());
    std::vector<double> times;
    std::vector<double> ghi;
    for (std::size_t row = 0; row < two.times.size(); ++row) {
        if (two.ghi[row] <= 0.0) continue;
        times.push_back(two.times[row]);
        ghi.push_back(two.ghi[row]);
    }
    const std::vector<double> air(times.size(), 20.0);
    const Weather sunlit = weather_from_observations(
        {.unix_time_s = times, .ghi_w_m2 = ghi, .air_c = air}, flat_site());
    CHECK(says(sunlit, "of night"));
    CHECK(sunlit.days[5] > static_cast<double>(times.size()) / 24.0 + 0.25);
}

TEST_CASE("small negative readings count as zero and are reported") {
    Day day;
    day.ghi[0] = -10.0;
    day.ghi[1] = -0.5;
    const Weather weather = weather_from_observations(day.global(), flat_site());
    CHECK(says(weather, "2 small negative readings"));
    CHECK(weather.irradiance_w_m2[0] == 0.0);
}

TEST_CASE("minutes of one steady hour give that hour's sun") {
    const Day minutes(60.0);
    const Day hours;
    const Weather fine = weather_from_observations(minutes.parts(), flat_site());
    const Weather coarse = weather_from_observations(hours.parts(), flat_site());
    CHECK(fine.step_hours == doctest::Approx(1.0 / 60.0));
    CHECK_FALSE(fine.has_cloud_band());
    CHECK(fine.irradiation_kwh_m2() == doctest::Approx(coarse.irradiation_kwh_m2()).epsilon(0.01));
    CHECK(fine.days[5] == doctest::Approx(1.0));
}
