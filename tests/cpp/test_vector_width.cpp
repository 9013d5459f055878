#include "greensboro.hpp"

#include <cmath>
#include <limits>
#include <random>

#include <doctest/doctest.h>

#include "heatmatch/solar/energy_curve.hpp"

using heatmatch::DiodeCurve;
using heatmatch::VectorWidth;

namespace {

constexpr VectorWidth every_width[] = {VectorWidth::portable, VectorWidth::avx2,
                                       VectorWidth::avx512};

/// Curves and loads over far more than panels have.
struct Points {
    std::vector<double> light, ln_i0, rs, gsh, ideality, load;
    std::vector<double> voltage, current;

    [[nodiscard]] heatmatch::DiodeCurves curves() const {
        return {light, ln_i0, rs, gsh, ideality};
    }
    [[nodiscard]] DiodeCurve at(std::size_t i) const {
        return {light[i], ln_i0[i], rs[i], gsh[i], ideality[i]};
    }
};

Points wide_points(std::size_t count) {
    std::mt19937_64 random(3);
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    Points points;
    for (std::size_t i = 0; i < count; ++i) {
        points.light.push_back(12.0 * unit(random) * (i % 17 == 0 ? 1e-4 : 1.0));
        points.ln_i0.push_back(-70.0 + 55.0 * unit(random));
        points.rs.push_back(i % 5 == 0 ? 0.0 : unit(random));
        points.gsh.push_back(i % 7 == 0 ? 0.0 : 0.02 * unit(random));
        points.ideality.push_back(0.5 + 3.0 * unit(random));
        points.load.push_back(std::exp(-8.0 + 16.0 * unit(random)));
    }
    points.voltage.resize(count);
    points.current.resize(count);
    return points;
}

}  // namespace

TEST_CASE("every build of the kernel gives the operating point of the plain one") {
    Points points = wide_points(5003);
    for (VectorWidth width : every_width) {
        CAPTURE(heatmatch::vector_width_name(width));
        operating_points(points.curves(), points.load, points.voltage, points.current, width);
        double worst = 0.0;
        for (std::size_t i = 0; i < points.load.size(); ++i) {
            const double plain = points.at(i).into_resistance(points.load[i]).current_a;
            worst = std::max(worst, std::fabs(points.current[i] / plain - 1.0));
        }
        CHECK(worst < 1e-13);
    }
}

TEST_CASE("every build of the kernel finds the largest power") {
    Points points = wide_points(5003);
    std::vector<double> power(points.load.size());
    for (VectorWidth width : every_width) {
        maximum_powers(points.curves(), power, width);
        double worst = 0.0;
        for (std::size_t i = 0; i < power.size(); ++i) {
            const double plain = points.at(i).maximum_power().power_w;
            worst = std::max(worst, std::fabs(power[i] / plain - 1.0));
        }
        CHECK(worst < 1e-9);
    }
    points.light[0] = 0.0;
    maximum_powers(points.curves(), power);
    CHECK(power[0] == 0.0);
}

TEST_CASE("no light gives nothing, no load gives the open-circuit voltage") {
    Points points = wide_points(3);
    points.light = {0.0, -1.0, 8.0};
    points.load = {5.0, 5.0, std::numeric_limits<double>::infinity()};
    for (VectorWidth width : every_width) {
        operating_points(points.curves(), points.load, points.voltage, points.current, width);
        CHECK(points.current[0] == 0.0);
        CHECK(points.voltage[1] == 0.0);
        CHECK(points.current[2] == 0.0);
        CHECK(points.voltage[2] == doctest::Approx(points.at(2).open_circuit_voltage_v()));
    }
}

TEST_CASE("every build of the kernel gives the same energy") {
    const heatmatch::SingleDiode diode{.light_current_a = 8.7,
                                       .ln_saturation_current = std::log(3e-10),
                                       .series_resistance_ohm = 0.3,
                                       .shunt_conductance_s = 1.0 / 250.0,
                                       .modified_ideality_v = 1.58,
                                       .alpha_isc_a_per_k = 0.005};
    const heatmatch::WeatherNodes nodes = weather_nodes(greensboro());
    const heatmatch::EnergyCurve plain(diode, 45.0, nodes, 3.7, VectorWidth::portable);
    for (VectorWidth width : every_width) {
        const heatmatch::EnergyCurve curve(diode, 45.0, nodes, 3.7, width);
        for (double ohm : {0.4, 3.7, 5.5, 90.0}) {
            CHECK(curve.delivered_kwh(ohm) ==
                  doctest::Approx(plain.delivered_kwh(ohm)).epsilon(1e-12));
            CHECK(curve.slope_kwh(ohm) ==
                  doctest::Approx(plain.slope_kwh(ohm)).epsilon(1e-11).scale(100.0));
        }
    }
}

TEST_CASE("the widest build has a name") {
    CHECK(heatmatch::widest_vectors() != VectorWidth::automatic);
    CHECK(heatmatch::vector_width_name(VectorWidth::automatic) ==
          heatmatch::vector_width_name(heatmatch::widest_vectors()));
}
