#include "unlike_yard.hpp"

#include <array>
#include <memory>

#include "heatmatch/match/candidate/unlike_season.hpp"
#include "heatmatch/solar/mixed_energy.hpp"
#include "heatmatch/solar/own_weather.hpp"

using heatmatch::Candidate;
using heatmatch::Installation;

namespace {

/// Groups on two or three planes.
Installation on_planes(const std::string& array, bool third) {
    Installation house = unlike_yard(array);
    house.panels[1].tilt_deg = 90.0;
    house.panels[1].azimuth_deg = 150.0;
    if (third) {
        house.panels[2].tilt_deg = 20.0;
        house.panels[2].azimuth_deg = 230.0;
    }
    return house;
}

std::shared_ptr<const heatmatch::Weather> weather_of(const Installation& house) {
    heatmatch::Sentences remarks;
    return heatmatch::own_weather(house, remarks, nullptr);
}

}  // namespace

TEST_CASE("the season of unlike panels on several planes is the sum over every row") {
    for (const bool third : {false, true}) {
        const Installation house = on_planes("barn pair x2 + porch four x2 | thin pair x2", third);
        CAPTURE(third);
        const Candidate candidate = heatmatch::assess(starter(), house);
        REQUIRE(candidate.season);
        const heatmatch::UnlikeArray& array = *candidate.circuit.unlike;
        const auto weather = weather_of(house);
        const heatmatch::ArraySun sun = heatmatch::array_sun(array, *weather, house.site);
        CHECK(sun.planes.size() == (third ? 3 : 2));
        const heatmatch::PlacedArray placed = sun.placed(array, heatmatch::PanelState::today);
        const double ohm = candidate.circuit.bank.typical_ohm();
        const double total = ohm + candidate.circuit.wire_ohm();
        const heatmatch::MixedEnergy exact = heatmatch::mixed_energy(
            placed.array, placed.places, sun.all(), std::array{total}, house.goals.months);
        CHECK(candidate.season->kwh ==
              doctest::Approx(exact.delivered_kwh.front() * ohm / total).epsilon(1.5e-3));
        CHECK(candidate.season->mpp_kwh == doctest::Approx(exact.mpp_kwh).epsilon(1.5e-3));
        CHECK(candidate.season->kwh_low < candidate.season->kwh);
        CHECK(candidate.season->kwh_high > candidate.season->kwh);
        CHECK(candidate.season->best_kwh >= candidate.season->kwh * (1.0 - 1e-9));
        double months = 0.0;
        for (const int month : candidate.season->months) {
            const auto m = static_cast<std::size_t>(month - 1);
            months += candidate.season->kwh_per_day[m] * heatmatch::days_of_month[m];
        }
        CHECK(months == doctest::Approx(candidate.season->kwh).epsilon(3e-3));
    }
}

TEST_CASE("shade on some substrings takes less than on whole panels") {
    Installation house = unlike_yard("barn pair x2 + porch four x2");
    const double free = heatmatch::assess(starter(), house).season->kwh;
    house.panels[1].shade_pct = {60.0};
    const double whole = heatmatch::assess(starter(), house).season->kwh;
    house.panels[1].shaded_substrings = 1;
    house.panels[1].bypass_diodes = 2;
    const double part = heatmatch::assess(starter(), house).season->kwh;
    CHECK(whole < part);
    CHECK(part < free);
}

TEST_CASE("weather on one plane serves no unlike planes, in one sentence") {
    const Installation house = on_planes("barn pair x2 + porch four x2", false);
    const std::vector<double> sun(24, 500.0);
    const std::vector<double> cells(24, 20.0);
    const auto weather =
        std::make_shared<heatmatch::Weather>(heatmatch::weather_from_plane(sun, cells, 1.0));
    CHECK_THROWS_WITH(heatmatch::assess(starter(), house, {.weather = weather}),
                      doctest::Contains("ghi"));
}
