#include "reference_csv.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <string>

#include <doctest/doctest.h>

#include "heatmatch/solar/clear_days.hpp"
#include "heatmatch/solar/rear_light.hpp"

using heatmatch::Plane;
using heatmatch::PlaneIrradiance;
using heatmatch::RearView;
using heatmatch::RowLayout;
using heatmatch::SkyIrradiance;
using heatmatch::SkyModel;
using heatmatch::SunBehind;
using heatmatch::SunPosition;
using heatmatch::Weather;

namespace {

constexpr double extraterrestrial_w_m2 = 1366.1;

double number_of(const ReferenceRow& row, const char* column) {
    return std::stod(row.at(column));
}

RowLayout layout_of(const ReferenceRow& row) {
    RowLayout layout{.tilt_deg = number_of(row, "tilt_deg"),
                     .height_m = number_of(row, "height_m"),
                     .slant_m = number_of(row, "slant_m")};
    if (!row.at("pitch_m").empty()) layout.pitch_m = number_of(row, "pitch_m");
    return layout;
}

double light_behind(const RearView& view, const Plane& plane, const SunPosition& sun,
                    const SkyIrradiance& sky, SkyModel model = SkyModel::isotropic) {
    const SunBehind behind = view.sun_behind(plane, sun);
    return view.on_back(behind, plane, sun, sky, extraterrestrial_w_m2, model).total_w_m2();
}

/// Sums over the moments of a layout.
struct Sums {
    double ours = 0.0;
    double ants = 0.0;
    double solarfactors = 0.0;
    double largest_error_w = 0.0;
};

}  // namespace

// Source: pvlib's ANTS-2D and solarfactors; tests/reference/rear_light.py made the rows. What they
// hold of short rows and of brighter sky about the sun is not looked at.
TEST_CASE("light on the backs agrees with two other programs in twenty layouts") {
    std::map<int, Sums> layouts;
    std::map<int, RearView> views;
    for (const ReferenceRow& row : read_reference("rear_light.csv")) {
        const int layout = std::stoi(row.at("layout"));
        if (views.count(layout) == 0) views.emplace(layout, RearView(layout_of(row)));
        const Plane plane{.tilt_deg = number_of(row, "tilt_deg"),
                          .azimuth_deg = 180.0,
                          .albedo = number_of(row, "albedo")};
        const SunPosition sun{.apparent_zenith_deg = number_of(row, "zenith_deg"),
                              .azimuth_deg = number_of(row, "azimuth_deg")};
        const SkyIrradiance sky{.dni_w_m2 = number_of(row, "dni_w_m2"),
                                .dhi_w_m2 = number_of(row, "dhi_w_m2")};
        const double ours = light_behind(views.at(layout), plane, sun, sky);
        Sums& sums = layouts[layout];
        sums.ours += ours;
        sums.ants += number_of(row, "ants2d");
        sums.solarfactors += number_of(row, "solarfactors");
        sums.largest_error_w =
            std::max(sums.largest_error_w, std::fabs(ours - number_of(row, "ants2d")));
    }
    REQUIRE(layouts.size() == 20);
    for (const auto& [layout, sums] : layouts) {
        // clang 14 captures no structured binding
        const int shown = layout;
        CAPTURE(shown);
        CHECK(sums.ours / sums.ants == doctest::Approx(1.0).epsilon(0.05));
        CHECK(sums.ours / sums.solarfactors == doctest::Approx(1.0).epsilon(0.10));
        CHECK(sums.largest_error_w < 13.0);
    }
}

// Source: what view factors are; a lone row sees ground and sky as its tilt says, and nothing else.
TEST_CASE("a back receives light from ground and sky according to its tilt") {
    for (const double tilt_deg : {0.0, 20.0, 45.0, 60.0, 90.0}) {
        CAPTURE(tilt_deg);
        const RearView alone({.tilt_deg = tilt_deg, .height_m = 1.0});
        const double sky = 0.5 * (1.0 - std::cos(tilt_deg * std::numbers::pi / 180.0));
        CHECK(alone.sky_share() == doctest::Approx(sky).epsilon(0.02).scale(1.0));
        CHECK(alone.sky_share() + alone.ground_share() == doctest::Approx(1.0));
        CHECK(alone.lit_by_sky_share() < alone.ground_share());
        const RearView in_rows({.tilt_deg = tilt_deg, .height_m = 1.0, .pitch_m = 4.0});
        CHECK(in_rows.sky_share() <= alone.sky_share());
        CHECK(in_rows.lit_by_sky_share() < alone.lit_by_sky_share());
    }
    // High above the ground its own shadow is small: it sees the whole sky of the ground.
    const RearView high({.tilt_deg = 30.0, .height_m = 30.0});
    CHECK(high.lit_by_sky_share() / high.ground_share() > 0.97);
}

// Source: the least that light does; more of it behind where the ground is lighter, the row higher
// and its mates further, none of it in the dark.
TEST_CASE("light behind grows with albedo, height and distance of rows") {
    const SunPosition noon{.apparent_zenith_deg = 40.0, .azimuth_deg = 180.0};
    const SkyIrradiance sky{.dni_w_m2 = 800.0, .dhi_w_m2 = 100.0};
    const auto behind = [&](const RowLayout& layout, double albedo) {
        return light_behind(RearView(layout), {layout.tilt_deg, 180.0, albedo}, noon, sky,
                            SkyModel::hay_davies);
    };
    const RowLayout usual{.tilt_deg = 35.0, .height_m = 1.0, .pitch_m = 4.0};
    double last = 0.0;
    for (const double albedo : {0.0, 0.2, 0.5, 0.8}) {
        CHECK(behind(usual, albedo) > last);
        last = behind(usual, albedo);
    }
    last = 0.0;
    for (const double height_m : {0.2, 0.5, 1.0, 2.0}) {
        RowLayout higher = usual;
        higher.height_m = height_m;
        CHECK(behind(higher, 0.2) > last);
        last = behind(higher, 0.2);
    }
    last = 0.0;
    for (const double pitch_m : {2.0, 3.0, 5.0, 12.0}) {
        RowLayout wider = usual;
        wider.pitch_m = pitch_m;
        CHECK(behind(wider, 0.2) > last);
        last = behind(wider, 0.2);
    }
    const SunPosition night{.apparent_zenith_deg = 100.0, .azimuth_deg = 0.0};
    CHECK(light_behind(RearView(usual), {35.0, 180.0, 0.2}, night, {}) == 0.0);
    // A sun in the north shines on the back of an upright row itself.
    const SunPosition north{.apparent_zenith_deg = 75.0, .azimuth_deg = 0.0};
    const RearView upright({.tilt_deg = 90.0, .height_m = 1.0});
    const SunBehind seen = upright.sun_behind({90.0, 180.0, 0.2}, north);
    CHECK(seen.direct == doctest::Approx(std::sin(75.0 * std::numbers::pi / 180.0)));
    const SunBehind shaded = RearView({.tilt_deg = 90.0, .height_m = 1.0, .pitch_m = 2.0})
                                 .sun_behind({90.0, 180.0, 0.2}, north);
    CHECK(shaded.direct < 0.7 * seen.direct);
}

TEST_CASE("weather of a site has rear light, and panels convert their share of it") {
    const heatmatch::Site site{.latitude_deg = 44.0,
                               .longitude_deg = -72.0,
                               .tilt_deg = 60.0,
                               .record_low_c = -30.0,
                               .albedo = 0.5,
                               .panel_height_m = 1.0};
    const Weather weather = heatmatch::clear_days(site, std::nullopt);
    REQUIRE(weather.rear_w_m2.size() == weather.size());
    const Weather both = heatmatch::with_rear_irradiance(weather, 0.8);
    const std::size_t noon = 12;
    CHECK(weather.rear_w_m2[noon] > 50.0);
    CHECK(both.irradiance_w_m2[noon] ==
          doctest::Approx(weather.irradiance_w_m2[noon] + 0.8 * weather.rear_w_m2[noon]));
    CHECK(both.cell_temperature_c(noon, 46.0) > weather.cell_temperature_c(noon, 46.0));
    CHECK(heatmatch::with_rear_irradiance(weather, 0.0) == weather);
    // What nobody told of height and rows is listed, apart from what all panels need.
    REQUIRE(weather.rear_assumed.size() == 2);
    CHECK(weather.rear_assumed[0].field == "row_slant_m");
    CHECK(weather.rear_assumed[1].field == "row_pitch_m");
    const std::vector<double> sun{500.0};
    const std::vector<double> cells{20.0};
    const Weather plain = heatmatch::weather_from_plane(sun, cells, 1.0);
    CHECK(heatmatch::with_rear_irradiance(plain, 0.8) == plain);
}
