#include "store_bench.hpp"

#include <doctest/doctest.h>

#include "heatmatch/match/margins/sensor_margins.hpp"
#include "heatmatch/match/margins/sheath_margins.hpp"

using heatmatch::Circuit;
using heatmatch::Margin;
using heatmatch::PlacedDevice;
using heatmatch::SensedPlace;
using heatmatch::Severity;

namespace {

/// A drum of two rods, one sensor.
Circuit with_sensor(PlacedDevice sensor) {
    Circuit circuit = circuit_in(drum(), "storage-rod-1000-240", 2);
    circuit.runs = {bench_run("thhn-12-awg", 30.0)};
    circuit.devices = {std::move(sensor)};
    return circuit;
}

std::vector<Margin> sensor_margins_at(const Circuit& circuit, double element_w) {
    return sensor_margins(circuit, heatmatch::heat_of(circuit, {.element_power_w = element_w}));
}

}  // namespace

TEST_CASE("a sensing body or probe withstands the temperature of its place, or that is reported") {
    const auto body = [](const char* id, SensedPlace place, double element_w) {
        PlacedDevice sensor = bench_device(id, "senses only", 1, "");
        sensor.device.senses = place;
        return margin_of(sensor_margins_at(with_sensor(sensor), element_w), "device temperature");
    };
    const Margin wall = body("snap-disc-fixed", SensedPlace::wall, 100.0);
    check_judged(wall, Severity::none, *wall.value, 150.0, 20.0);
    // Its whole body in a bed of several hundred degrees.
    CHECK(body("snap-disc-fixed", SensedPlace::bed, 1000.0).severity == Severity::warning);
    // A probe for 110 °C there; one for 1200 °C, whose head stays outside, is right.
    CHECK(body("digital-temperature-switch-12v", SensedPlace::bed, 1000.0).severity ==
          Severity::warning);
    CHECK(body("limit-controller-thermocouple", SensedPlace::bed, 1000.0).severity !=
          Severity::warning);
    Circuit no_store = with_sensor(bench_device("snap-disc-fixed", "senses only", 1, ""));
    no_store.heat = nullptr;
    check_not_assessed(margin_of(sensor_margins(no_store, std::nullopt), "device temperature"),
                       "store");
}

TEST_CASE(
    "a device that also carries current is assessed at its sensor, and at its body in the"
    " run") {
    PlacedDevice disc = bench_device("snap-disc-fixed", "breaks dc");
    disc.device.senses = SensedPlace::bed;
    const auto margins = sensor_margins_at(with_sensor(disc), 1000.0);
    REQUIRE(margins.size() == 1);
    CHECK(margins.front().subject == "sensor of device \"snap-disc-fixed\"");
    CHECK(margins.front().severity == Severity::warning);
    CHECK(sensor_margins_at(with_sensor(bench_device("pv-isolator-2-pole", "breaks dc", 2)), 1.0)
              .empty());
}
