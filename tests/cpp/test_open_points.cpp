#include "demo.hpp"

#include <string>

#include <doctest/doctest.h>

#include "heatmatch/answer/open_points.hpp"
#include "heatmatch/match/candidate/assess.hpp"

using heatmatch::Installation;
using heatmatch::Severity;

TEST_CASE("what is not stated or not assessed keeps a circuit from being for building") {
    Installation yard = demo();
    yard.site.frames_bonded = true;
    yard.site.live_parts_enclosed = true;
    yard.store->vessel_bonded = true;
    yard.store->sheath_bonded = true;
    heatmatch::Element element = heatmatch::find_element(starter(), "storage-rod-1000-240");
    element.alloy = "nicr-80-20";
    element.insulation_resistance_mohm = 50.0;
    yard.parts.elements = {element};
    const auto said = [&] {
        std::string all;
        for (const auto& point : heatmatch::open_points(heatmatch::assess(starter(), yard))) {
            all += point.said.text() + '\n';
        }
        return all;
    };
    const std::string before = said();
    CHECK_FALSE(contains(before, "bonding"));
    CHECK_FALSE(contains(before, "earth fault"));
    yard.store->vessel_bonded.reset();
    CHECK(contains(said(), "bonding"));
    yard.store->vessel_bonded = true;
    yard.parts.elements.front().insulation_resistance_mohm.reset();
    CHECK(contains(said(), "insulation_resistance_mohm"));
    // In a dry place with one panel less it is below the touch voltage.
    yard.site.wet = false;
    yard.circuit->panels = "1S1P";
    CHECK_FALSE(contains(said(), "insulation_resistance_mohm"));
    yard.devices.clear();
    CHECK_FALSE(heatmatch::is_for_building(heatmatch::assess(starter(), yard)));
    CHECK_FALSE(heatmatch::building_mark(heatmatch::assess(starter(), yard)).empty());
}

TEST_CASE("each severity has a mark that survives black and white") {
    CHECK(heatmatch::severity_mark(Severity::danger) == "▲");
    CHECK(heatmatch::severity_mark(Severity::warning) == "△");
    CHECK(heatmatch::severity_mark(Severity::caution) == "◆");
    CHECK(heatmatch::severity_mark(Severity::not_assessed) == "?");
    CHECK(heatmatch::severity_mark(Severity::none) == "·");
    CHECK(heatmatch::marked_severity(Severity::none).text() == "· no finding");
}
