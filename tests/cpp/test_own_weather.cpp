#include "bench_months.hpp"

#include <doctest/doctest.h>

#include "heatmatch/solar/monthly_weather.hpp"
#include "heatmatch/solar/own_weather.hpp"

using heatmatch::Installation;
using heatmatch::own_weather;
using heatmatch::Sentences;
using heatmatch::text_of;
using heatmatch::Weather;
using heatmatch::weather_from_months;

namespace {

Installation with_months() {
    Installation installation;
    installation.site = bench_site();
    installation.weather = bench_normals();
    return installation;
}

}  // namespace

TEST_CASE("own weather is the year of hours that its twelve months give") {
    const Installation installation = with_months();
    Sentences remarks;
    const auto own = own_weather(installation, remarks);
    REQUIRE(own);
    CHECK(remarks.empty());
    const Weather made = weather_from_months(*installation.weather, installation.site);
    CHECK(own->irradiance_w_m2 == made.irradiance_w_m2);
    CHECK(*own == made);
}

TEST_CASE("other months or another plane give other weather") {
    Installation installation = with_months();
    Sentences remarks;
    const auto first = own_weather(installation, remarks);
    installation.weather->sun_hours[5] *= 0.9;
    CHECK(own_weather(installation, remarks)->irradiance_w_m2 != first->irradiance_w_m2);
    installation = with_months();
    installation.site.tilt_deg = *installation.site.tilt_deg + 10.0;
    CHECK(own_weather(installation, remarks)->irradiance_w_m2 != first->irradiance_w_m2);
}

TEST_CASE("without months there is none, and without a plane the missing fields are named") {
    Installation installation = with_months();
    Sentences remarks;
    installation.site.tilt_deg.reset();
    CHECK_FALSE(own_weather(installation, remarks));
    CHECK(text_of(remarks).find("the site lacks tilt_deg") != std::string::npos);
    installation.weather.reset();
    remarks.clear();
    CHECK_FALSE(own_weather(installation, remarks));
    CHECK(remarks.empty());
}
