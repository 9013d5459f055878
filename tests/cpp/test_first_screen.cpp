#include "demo.hpp"

#include <string>

#include <doctest/doctest.h>

#include "heatmatch/answer/first_screen.hpp"
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
    CHECK(contains(block_of(screen, "not here"), "No part carries a listing"));
    CHECK(screen.closing.size() == 2);
    CHECK(screen.others.rows.size() >= ranking.alternatives.size());
    for (const auto& row : screen.others.rows) CHECK(row.size() == screen.others.columns.size());
}

TEST_CASE("other ways of one name show the watts of an element") {
    Ranking ranking = demo_ranking();
    REQUIRE_FALSE(ranking.alternatives.empty());
    ranking.alternatives.resize(1);
    heatmatch::Circuit& other = ranking.alternatives.front().candidate.circuit;
    other = ranking.recommended->circuit;
    const auto cell = [&ranking] {
        return heatmatch::first_screen(ranking).others.rows.front()[1].text();
    };
    CHECK_FALSE(contains(cell(), " W "));
    other.bank.element.id += "-b";
    other.bank.element.rated_w = 1234.0;
    CHECK(contains(cell(), "1234 W "));
}

TEST_CASE("a bill whose range exceeds the budget says so") {
    Ranking ranking = demo_ranking();
    heatmatch::Bill& bill = ranking.recommended->bill;
    REQUIRE(bill.high());
    bill.budget = 0.5 * (*bill.typical() + *bill.high());
    CHECK(contains(block_of(heatmatch::first_screen(ranking), "buy"), "may exceed it"));
    bill.budget = *bill.high() + 1.0;
    CHECK_FALSE(contains(block_of(heatmatch::first_screen(ranking), "buy"), "may exceed it"));
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
