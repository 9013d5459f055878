#include "demo.hpp"

#include <string>

#include <doctest/doctest.h>

#include "heatmatch/answer/drawing_labels.hpp"
#include "heatmatch/match/candidate/assess.hpp"

using heatmatch::Installation;
using heatmatch::UnitSystem;

namespace {

std::string drawing_text(const heatmatch::Sentences& sentences, UnitSystem units = UnitSystem::si) {
    std::string all;
    for (const heatmatch::Sentence& each : sentences) all += each.text(units) + '\n';
    return all;
}

}  // namespace

TEST_CASE("a drawing has volts, amperes, wires and devices in the words of a shop") {
    const heatmatch::Candidate candidate = heatmatch::assess(starter(), demo());
    const heatmatch::DrawingLabels labels = heatmatch::drawing_labels(candidate);
    CHECK(contains(drawing_text(labels.array), "2 panels in series"));
    CHECK(contains(drawing_text(labels.array), " V at the record low"));
    CHECK(contains(drawing_text(labels.bank), "2 × Night-storage-heater rod"));
    CHECK(contains(drawing_text(labels.working), " A at "));
    REQUIRE(labels.runs.size() == candidate.circuit.runs.size());
    CHECK(contains(drawing_text(labels.runs[0]), "9 m one way"));
    CHECK(contains(drawing_text(labels.runs[0], UnitSystem::us), "29.5 ft one way"));
    REQUIRE(labels.devices.size() == candidate.circuit.devices.size());
    CHECK(contains(drawing_text(labels.devices[0]), "interrupts DC"));
    CHECK(contains(drawing_text(labels.devices[2]), "senses the wall, opens at 90 °C"));
}

TEST_CASE("a drawing says what lies where in the store, and what is not stated") {
    Installation yard = demo();
    const auto said = [&yard](UnitSystem units = UnitSystem::si) {
        return drawing_text(heatmatch::store_labels(heatmatch::assess(starter(), yard)), units);
    };
    CHECK(contains(said(), "0.57 m across, 0.85 m high"));
    CHECK(
        contains(said(), "elements upright, 120 mm apart, 100 mm above the floor, in the middle"));
    CHECK(contains(said(UnitSystem::us), " ft"));
    CHECK(contains(said(), "on concrete, 300 mm to anything that burns"));
    yard.store->element_lies = true;
    yard.store->from_axis_mm = 40.0;
    CHECK(contains(said(), "elements lying"));
    CHECK(contains(said(), "40 mm from the middle"));
    yard.store->element_lies.reset();
    yard.store->from_axis_mm.reset();
    yard.store->element_height_mm.reset();
    yard.store->element_spacing_mm.reset();
    yard.store->vessel.reset();
    CHECK(contains(said(), "place of the elements not stated"));
    CHECK(contains(said(), "vessel not stated"));
    yard.store.reset();
    yard.devices.clear();
    CHECK(said().empty());
}
