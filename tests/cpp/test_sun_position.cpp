#include "degrees.hpp"
#include "reference_csv.hpp"

#include <chrono>
#include <cmath>
#include <numbers>

#include <doctest/doctest.h>

#include "heatmatch/solar/sun_position.hpp"

using heatmatch::Place;
using heatmatch::sun_position;
using heatmatch::SunPosition;

namespace {

/// Seconds since 1970 of a text such as 2023-06-21T17:20:00Z.
double unix_time_s(const std::string& utc) {
    using namespace std::chrono;
    const auto piece = [&utc](std::size_t from, std::size_t count) {
        return std::stoi(utc.substr(from, count));
    };
    const sys_days date = year(piece(0, 4)) / month(static_cast<unsigned>(piece(5, 2))) /
                          day(static_cast<unsigned>(piece(8, 2)));
    const sys_seconds moment =
        date + hours(piece(11, 2)) + minutes(piece(14, 2)) + seconds(piece(17, 2));
    return static_cast<double>(moment.time_since_epoch().count());
}

/// Angle on the sky between two directions; azimuths alone say little about a sun overhead [deg].
double apart_deg(double zenith_a, double azimuth_a, double zenith_b, double azimuth_b) {
    const double haversine = 0.5 * (1.0 - cosine_deg(zenith_a - zenith_b)) +
                             0.5 * cosine_deg(90.0 - zenith_a) * cosine_deg(90.0 - zenith_b) *
                                 (1.0 - cosine_deg(azimuth_a - azimuth_b));
    return 2.0 * std::asin(std::sqrt(haversine)) * 180.0 / std::numbers::pi;
}

Place place_of(const ReferenceRow& row) {
    return {.latitude_deg = number(row, "lat_deg"),
            .longitude_deg = number(row, "lon_deg"),
            .elevation_m = number(row, "altitude_m")};
}

}  // namespace

// Source: pvlib; tests/reference/sun_positions.csv tells how the rows were made.
TEST_CASE("the sun's position agrees with the full solution") {
    for (const ReferenceRow& row : read_reference("sun_positions.csv")) {
        CAPTURE(row.at("case"));
        const double time_s = unix_time_s(row.at("utc"));
        const SunPosition sun = sun_position(place_of(row), time_s);
        const double azimuth = number(row, "azimuth_deg");
        CHECK(apart_deg(sun.zenith_deg, sun.azimuth_deg, number(row, "zenith_deg"), azimuth) <
              0.012);
        CHECK(apart_deg(sun.apparent_zenith_deg, sun.azimuth_deg,
                        number(row, "apparent_zenith_deg"), azimuth) < 0.012);
        CHECK(heatmatch::standard_pressure_pa(number(row, "altitude_m")) ==
              doctest::Approx(number(row, "pressure_Pa")).epsilon(1e-7));
        CHECK(heatmatch::extraterrestrial_normal_w_m2(time_s) ==
              doctest::Approx(number(row, "dni_extra_W_m2")).epsilon(1e-7));
    }
}

// Source: the worked example of the solar position algorithm (reda-andreas-2004), from memory.
TEST_CASE("the published example of the solar position algorithm is met") {
    const Place place{
        .latitude_deg = 39.742476, .longitude_deg = -105.1786, .elevation_m = 1830.14};
    const SunPosition sun = sun_position(place, unix_time_s("2003-10-17T19:30:30Z"),
                                         {.pressure_pa = 82000.0, .air_c = 11.0});
    CHECK(std::fabs(sun.apparent_zenith_deg - 50.11162) < 0.01);
    CHECK(std::fabs(sun.azimuth_deg - 194.34024) < 0.01);
}

// Source: Meeus, example 25.a (meeus-1998), from memory: 1992 October 13.0 dynamical time.
TEST_CASE("the declination is that of the book's example") {
    constexpr double dynamical_minus_universal_s = 69.0;  // as the library has it
    const double time_s = unix_time_s("1992-10-13T00:00:00Z") - dynamical_minus_universal_s;
    CHECK(std::fabs(sun_position(Place{}, time_s).declination_deg - -7.78507) < 1e-5);
}

TEST_CASE("refraction lifts a low sun and leaves one overhead") {
    const Place place{.latitude_deg = 0.0, .longitude_deg = 0.0};
    const double midnight_s = unix_time_s("2024-03-20T00:00:00Z");
    double before = 1.0;
    for (double time_s = midnight_s + 6.2 * 3600.0; time_s < midnight_s + 11.0 * 3600.0;
         time_s += 600.0) {
        const SunPosition sun = sun_position(place, time_s);
        const double lifted = sun.zenith_deg - sun.apparent_zenith_deg;
        CHECK(lifted > 0.0);
        CHECK(lifted < before);
        before = lifted;
    }
    const SunPosition night = sun_position(place, midnight_s);
    CHECK(night.zenith_deg > 170.0);
    CHECK(night.apparent_zenith_deg == night.zenith_deg);
}

TEST_CASE("the sun is found at the poles and at the date line") {
    const double time_s = unix_time_s("2024-06-20T12:00:00Z");
    for (double latitude : {-90.0, 90.0}) {
        const SunPosition sun = sun_position({.latitude_deg = latitude}, time_s);
        CHECK(sun.zenith_deg ==
              doctest::Approx(90.0 - std::copysign(sun.declination_deg, latitude)).epsilon(1e-4));
        CHECK(std::isfinite(sun.azimuth_deg));
    }
    const SunPosition east = sun_position({.latitude_deg = 10.0, .longitude_deg = 180.0}, time_s);
    const SunPosition west = sun_position({.latitude_deg = 10.0, .longitude_deg = -180.0}, time_s);
    CHECK(apart_deg(east.zenith_deg, east.azimuth_deg, west.zenith_deg, west.azimuth_deg) < 1e-6);
}

TEST_CASE("days of the year count in UTC, before 1970 too") {
    CHECK(heatmatch::day_of_year(unix_time_s("2023-01-01T00:00:00Z")) == 1);
    CHECK(heatmatch::day_of_year(unix_time_s("2023-12-31T23:59:59Z")) == 365);
    CHECK(heatmatch::day_of_year(unix_time_s("2024-12-31T23:59:59Z")) == 366);
    CHECK(heatmatch::day_of_year(0.0) == 1);
    CHECK(heatmatch::day_of_year(-0.5) == 365);
}

// Source: the standard atmosphere of ICAO, from memory.
TEST_CASE("pressure is that of the standard atmosphere") {
    CHECK(heatmatch::standard_pressure_pa(0.0) == doctest::Approx(101325.0).epsilon(1e-4));
    CHECK(heatmatch::standard_pressure_pa(1000.0) == doctest::Approx(89874.6).epsilon(1e-4));
    CHECK(heatmatch::standard_pressure_pa(5000.0) == doctest::Approx(54019.9).epsilon(1e-4));
}
