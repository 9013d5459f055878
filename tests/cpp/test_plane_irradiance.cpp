#include "reference_csv.hpp"

#include <cmath>
#include <numbers>

#include <doctest/doctest.h>

#include "heatmatch/solar/plane_irradiance.hpp"

using heatmatch::erbs_split;
using heatmatch::glass_transmission;
using heatmatch::Plane;
using heatmatch::plane_irradiance;
using heatmatch::PlaneIrradiance;
using heatmatch::SkyIrradiance;
using heatmatch::SkyModel;
using heatmatch::SunPosition;

namespace {

constexpr double extraterrestrial_w_m2 = 1366.1;

double radians_of(double angle_deg) {
    return angle_deg * std::numbers::pi / 180.0;
}

/// A sky whose parts add up.
SkyIrradiance sky_of(double dni, double dhi, double zenith_deg) {
    return {
        .ghi_w_m2 = dni * std::cos(radians_of(zenith_deg)) + dhi, .dni_w_m2 = dni, .dhi_w_m2 = dhi};
}

/// Transmission of light that comes alike from everywhere a tilted plane sees of the sky, or of
/// the ground, by summing over directions.
double summed_transmission(double tilt_deg, bool ground) {
    constexpr int rings = 360;
    constexpr int steps = 720;
    double passed = 0.0;
    double all = 0.0;
    for (int i = 0; i < rings; ++i) {
        const double zenith = radians_of((i + 0.5) * 90.0 / rings + (ground ? 90.0 : 0.0));
        for (int k = 0; k < steps; ++k) {
            const double around = radians_of((k + 0.5) * 360.0 / steps);
            const double cosine =
                std::cos(radians_of(tilt_deg)) * std::cos(zenith) +
                std::sin(radians_of(tilt_deg)) * std::sin(zenith) * std::cos(around);
            if (cosine <= 0.0) continue;
            const double weight = cosine * std::sin(zenith);
            all += weight;
            passed += weight * glass_transmission(std::acos(cosine) * 180.0 / std::numbers::pi);
        }
    }
    return passed / all;
}

}  // namespace

// Source: pvlib; tests/reference/sun_positions.csv tells how the rows were made.
TEST_CASE("irradiance on planes agrees with pvlib") {
    for (const ReferenceRow& row : read_reference("sun_positions.csv")) {
        CAPTURE(row.at("case"));
        const PlaneIrradiance on =
            plane_irradiance({.tilt_deg = number(row, "tilt_deg"),
                              .azimuth_deg = number(row, "surface_azimuth_deg")},
                             {.zenith_deg = number(row, "zenith_deg"),
                              .apparent_zenith_deg = number(row, "apparent_zenith_deg"),
                              .azimuth_deg = number(row, "azimuth_deg")},
                             {.ghi_w_m2 = number(row, "ghi_in"),
                              .dni_w_m2 = number(row, "dni_in"),
                              .dhi_w_m2 = number(row, "dhi_in")},
                             number(row, "dni_extra_W_m2"));
        // The file prints four decimals.
        const auto as_printed = [&row](const char* column) {
            return doctest::Approx(number(row, column)).epsilon(1e-4);
        };
        CHECK(on.beam_w_m2 == as_printed("poa_direct"));
        CHECK(on.circumsolar_w_m2 + on.sky_w_m2 == as_printed("poa_sky_diffuse"));
        CHECK(on.ground_w_m2 == as_printed("poa_ground_diffuse"));
        CHECK(on.total_w_m2() == as_printed("poa_global"));
    }
}

TEST_CASE("a horizontal plane receives the global irradiance") {
    for (double zenith = 0.0; zenith < 89.0; zenith += 4.0) {
        const SkyIrradiance sky = sky_of(700.0, 120.0, zenith);
        const SunPosition sun{.apparent_zenith_deg = zenith, .azimuth_deg = 77.0};
        for (SkyModel model : {SkyModel::hay_davies, SkyModel::isotropic}) {
            CHECK(plane_irradiance(Plane{}, sun, sky, extraterrestrial_w_m2, model).total_w_m2() ==
                  doctest::Approx(sky.ghi_w_m2).epsilon(1e-12));
        }
    }
}

// The view factors of Liu and Jordan by hand: (1 + cos 60°)/2 = 3/4, (1 - cos 60°)/2 = 1/4.
TEST_CASE("an isotropic sky is seen by its view factor") {
    const SunPosition sun{.apparent_zenith_deg = 60.0, .azimuth_deg = 180.0};
    const PlaneIrradiance on =
        plane_irradiance({.tilt_deg = 60.0, .albedo = 0.4}, sun, sky_of(500.0, 200.0, 60.0),
                         extraterrestrial_w_m2, SkyModel::isotropic);
    CHECK(on.beam_w_m2 == doctest::Approx(500.0));
    CHECK(on.circumsolar_w_m2 == 0.0);
    CHECK(on.sky_w_m2 == doctest::Approx(150.0));
    CHECK(on.ground_w_m2 == doctest::Approx(450.0 * 0.4 / 4.0));
}

TEST_CASE("a sun behind the plane or below the horizon gives no direct light") {
    const Plane south{.tilt_deg = 90.0};
    const SkyIrradiance sky{.ghi_w_m2 = 20.0, .dni_w_m2 = 40.0, .dhi_w_m2 = 20.0};
    for (const SunPosition& sun :
         {SunPosition{.apparent_zenith_deg = 50.0, .azimuth_deg = 0.0},
          SunPosition{.apparent_zenith_deg = 91.0, .azimuth_deg = 180.0}}) {
        const PlaneIrradiance on = plane_irradiance(south, sun, sky, extraterrestrial_w_m2);
        CHECK(on.beam_w_m2 == 0.0);
        CHECK(on.circumsolar_w_m2 == 0.0);
        CHECK(on.sky_w_m2 > 9.0);
    }
    const SunPosition night{.apparent_zenith_deg = 130.0, .azimuth_deg = 180.0};
    CHECK(plane_irradiance(south, night, SkyIrradiance{}, extraterrestrial_w_m2).total_w_m2() ==
          0.0);
}

TEST_CASE("incidence angles of planes that look at the sun, away from it and up") {
    const SunPosition sun{.apparent_zenith_deg = 35.0, .azimuth_deg = 140.0};
    const auto angle = [&sun](double tilt, double azimuth) {
        return heatmatch::incidence_angle_deg({.tilt_deg = tilt, .azimuth_deg = azimuth}, sun);
    };
    CHECK(std::fabs(angle(35.0, 140.0)) < 1e-5);
    CHECK(angle(55.0, 320.0) == doctest::Approx(90.0));
    CHECK(angle(0.0, 10.0) == doctest::Approx(35.0));
    CHECK(angle(35.0, 500.0) < 1e-5);
}

// Source: equation 1 of Erbs, Klein and Duffie (erbs-1982); the polynomial by hand at kt = 0.5:
// 0.9511 - 0.0802 + 1.097 - 2.07975 + 0.771 = 0.65915.
TEST_CASE("global light is split as Erbs has it") {
    const auto diffuse_share = [](double kt) {
        const double ghi = kt * extraterrestrial_w_m2 * std::cos(radians_of(30.0));
        const SkyIrradiance sky = erbs_split(ghi, 30.0, extraterrestrial_w_m2);
        CHECK(sky.ghi_w_m2 == ghi);
        CHECK(sky.dni_w_m2 * std::cos(radians_of(30.0)) + sky.dhi_w_m2 ==
              doctest::Approx(ghi).epsilon(1e-12));
        return sky.dhi_w_m2 / ghi;
    };
    CHECK(diffuse_share(0.1) == doctest::Approx(0.991));
    CHECK(diffuse_share(0.5) == doctest::Approx(0.65915));
    CHECK(diffuse_share(0.9) == doctest::Approx(0.165));
    // The published fit itself steps by 0.0003 at both joints.
    for (double joint : {0.22, 0.8})
        CHECK(std::fabs(diffuse_share(joint - 1e-9) - diffuse_share(joint + 1e-9)) < 3e-4);
}

TEST_CASE("a low sun leaves diffuse light only, night none, and no light is lost") {
    const SkyIrradiance low = erbs_split(15.0, 88.0, extraterrestrial_w_m2);
    CHECK(low.dhi_w_m2 == 15.0);
    CHECK(low.dni_w_m2 == 0.0);
    CHECK(erbs_split(0.0, 120.0, extraterrestrial_w_m2).dhi_w_m2 == 0.0);
    CHECK(erbs_split(-2.0, 120.0, extraterrestrial_w_m2).ghi_w_m2 == 0.0);
}

TEST_CASE("unknown values stay unknown") {
    const double unknown = std::nan("");
    CHECK(std::isnan(erbs_split(500.0, unknown, extraterrestrial_w_m2).dhi_w_m2));
    CHECK(std::isnan(erbs_split(unknown, 40.0, extraterrestrial_w_m2).dni_w_m2));
    CHECK(std::isnan(glass_transmission(unknown)));
    const SunPosition nowhere{.apparent_zenith_deg = unknown, .azimuth_deg = 180.0};
    CHECK(std::isnan(plane_irradiance({.tilt_deg = 30.0}, nowhere, sky_of(500.0, 100.0, 40.0),
                                      extraterrestrial_w_m2)
                         .total_w_m2()));
}

TEST_CASE(
    "glass transmits all light at normal incidence, none along it, and less and less "
    "between") {
    CHECK(glass_transmission(0.0) == 1.0);
    CHECK(glass_transmission(90.0) == 0.0);
    CHECK(glass_transmission(120.0) == 0.0);
    CHECK(glass_transmission(89.9999) < 1e-3);
    double before = 1.0;
    for (double angle = 0.5; angle < 90.0; angle += 0.5) {
        const double passed = glass_transmission(angle);
        CHECK(passed < before + 1e-12);
        before = passed;
    }
}

// Fresnel by hand at Brewster's angle of the glass, atan 1.526 = 56.76°: no p-polarised light is
// reflected, of the s-polarised ((n² - 1)/(n² + 1))² = 0.1593, so 0.9203 of all passes; over the
// 0.9566 of normal incidence and 0.9984 for the longer way through the glass.
TEST_CASE("glass at Brewster's angle follows Fresnel") {
    constexpr double n2 = 1.526 * 1.526;
    const double s = (n2 - 1.0) / (n2 + 1.0);
    const double normal = (1.526 - 1.0) / (1.526 + 1.0);
    const double longer = std::sqrt((n2 + 1.0) / n2) - 1.0;
    const double expected =
        (1.0 - 0.5 * s * s) / (1.0 - normal * normal) * std::exp(-4.0 * 0.002 * longer);
    CHECK(glass_transmission(std::atan(1.526) * 180.0 / std::numbers::pi) ==
          doctest::Approx(expected).epsilon(1e-9));
}

TEST_CASE("diffuse light behind glass is that of a sum over the directions it comes from") {
    constexpr PlaneIrradiance one{
        .beam_w_m2 = 1.0, .circumsolar_w_m2 = 1.0, .sky_w_m2 = 1.0, .ground_w_m2 = 1.0};
    for (double tilt : {20.0, 45.0, 70.0, 90.0}) {
        CAPTURE(tilt);
        const PlaneIrradiance behind = heatmatch::behind_glass(one, {.tilt_deg = tilt}, 25.0);
        CHECK(std::fabs(behind.sky_w_m2 - summed_transmission(tilt, false)) < 0.015);
        CHECK(std::fabs(behind.ground_w_m2 - summed_transmission(tilt, true)) < 0.03);
        CHECK(behind.beam_w_m2 == glass_transmission(25.0));
        CHECK(behind.circumsolar_w_m2 == behind.beam_w_m2);
    }
}
