#include "demo.hpp"

#include <string>

#include <doctest/doctest.h>

#include "heatmatch/answer/first_screen.hpp"
#include "heatmatch/answer/open_points.hpp"
#include "heatmatch/match/candidate/assess.hpp"

using heatmatch::FirstScreen;
using heatmatch::Installation;
using heatmatch::Ranking;
using heatmatch::Severity;

namespace {

std::string block_of(const FirstScreen& screen, std::string_view label) {
    for (const heatmatch::ScreenBlock& block : screen.blocks) {
        if (block.label.text() != label) continue;
        std::string all;
        for (const heatmatch::ScreenLine& line : block.lines) all += line.said.text() + '\n';
        return all;
    }
    return {};
}

}  // namespace

TEST_CASE("the first screen of a ranking is that of its recommendation, with its bill") {
    const Ranking& ranking = demo_ranking();
    REQUIRE(ranking.recommended);
    const FirstScreen screen = heatmatch::first_screen(ranking);
    const heatmatch::Circuit& circuit = ranking.recommended->circuit;
    const std::string build = block_of(screen, "build");
    CHECK(contains(build, circuit.owned.group));
    CHECK(contains(build, "Night-storage-heater rod"));
    CHECK(contains(build, std::to_string(circuit.bank.hookup.count()) + " ×"));
    CHECK(contains(block_of(screen, "buy"), "150 USD"));
    CHECK(contains(block_of(screen, "heat"), "Nov to Mar"));
    CHECK(contains(block_of(screen, "limit"), "105 V"));
    CHECK_FALSE(block_of(screen, "checks").empty());
    CHECK(contains(block_of(screen, "not here"), "listed for this use"));
    CHECK(screen.closing.size() == 2);
    CHECK(screen.others.rows.size() >= ranking.alternatives.size());
    for (const auto& row : screen.others.rows) CHECK(row.size() == screen.others.columns.size());
}

TEST_CASE("a danger is the status of the first screen, and nothing is offered to buy") {
    Installation installation = demo();
    installation.site.frames_bonded = false;
    const FirstScreen screen = heatmatch::first_screen(heatmatch::assess(starter(), installation));
    REQUIRE(screen.status.severity == Severity::danger);
    CHECK(contains(screen.status.said, "Not for building"));
    CHECK(block_of(screen, "buy").empty());
}

TEST_CASE("without a recommendation the first screen names what is missing") {
    Installation installation = demo();
    installation.store.reset();
    const Ranking ranking = heatmatch::rank(starter(), installation, {.top = 5});
    const FirstScreen screen = heatmatch::first_screen(ranking);
    CHECK(contains(screen.status.said, "No circuit can be recommended"));
    CHECK(contains(screen.status.said, ranking.lacking.text()));
    CHECK(screen.others.rows.empty());
    CHECK_FALSE(block_of(screen, "nearest").empty());
}

// Source: the rule: limit and pressure at any voltage; disconnect, bonding and earth fault above
// the touch voltage.
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
    CHECK(heatmatch::severity_mark(Severity::caution) == "◆");
    CHECK(heatmatch::severity_mark(Severity::not_assessed) == "?");
    CHECK(heatmatch::severity_mark(Severity::none) == "·");
    CHECK(heatmatch::marked_severity(Severity::none).text() == "· no finding");
}
