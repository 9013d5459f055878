#include "long_run.hpp"
#include "recommended_by_rule.hpp"

#include <doctest/doctest.h>

using heatmatch::Candidate;
using heatmatch::Installation;
using heatmatch::Ranking;

namespace {

std::vector<by_rule::Row> rows_of(const Ranking& ranking) {
    std::vector<by_rule::Row> rows;
    for (const Candidate& candidate : ranking.candidates) {
        rows.push_back({.title = candidate.circuit.title(), .like_it = candidate.like_it});
    }
    return rows;
}

/// Compares folding in the stream with folding of the whole list, also where few rows are kept.
/// Gives the number of folded pairings.
int check_folding(const Installation& installation, int max_bank = 4) {
    heatmatch::RankOptions options = keep_all();
    options.max_bank = max_bank;
    options.fold = false;
    const std::vector<by_rule::Row> wanted =
        by_rule::folded(heatmatch::rank(starter(), installation, options).candidates);
    options.fold = true;
    for (const std::size_t top : {std::size_t{100000}, wanted.size() / 2, std::size_t{7}}) {
        options.top = top;
        auto first = wanted;
        first.resize(std::min(top, wanted.size()));
        CHECK(rows_of(heatmatch::rank(starter(), installation, options)) == first);
    }
    int folded = 0;
    for (const by_rule::Row& row : wanted) folded += row.like_it;
    return folded;
}

}  // namespace

// Source: the rule, applied to every candidate with all its margins.
TEST_CASE("folding in the stream equals folding a small list") {
    Installation yard = demo();
    yard.panels.resize(2);
    yard.elements = {{.element = "storage-rod-1000-240", .count = 4}};
    check_folding(yard);
}

TEST_CASE("folding in the stream equals folding the whole list" *
          doctest::skip(in_a_slow_build())) {
    SUBCASE("the demo") {
        CHECK(check_folding(demo()) > 0);
    }
    SUBCASE("elements that are owned, so that more of them cost nothing") {
        Installation yard = demo();
        yard.elements = {{.element = "storage-rod-1000-240", .count = 9},
                         {.element = "tubular-1000-120", .count = 9}};
        CHECK(check_folding(yard, 9) > 0);
    }
    SUBCASE("with runs to each branch") {
        Installation yard = demo();
        yard.runs.back().carries = heatmatch::Carried::branch;
        yard.elements = {{.element = "storage-rod-1000-240", .count = 9}};
        check_folding(yard, 9);
    }
    SUBCASE("wire chosen at the element") {
        Installation yard = demo();
        yard.runs.back().wire = "choose";
        yard.panels.resize(2);
        yard.elements = {{.element = "storage-rod-1000-240", .count = 4}};
        check_folding(yard);
    }
    SUBCASE("without budget and without wire") {
        Installation yard = demo();
        yard.goals.budget.reset();
        yard.runs.clear();
        yard.devices.clear();
        yard.panels.resize(2);
        CHECK(check_folding(yard) >= 0);
    }
}

TEST_CASE("a bank with more headroom is not folded under a cheaper one, nor the other way") {
    Installation yard = demo();
    yard.goals.budget.reset();
    heatmatch::RankOptions options = keep_all();
    options.element = "oven-bake-2585-240";
    options.group = "porch four";
    const Ranking ranking = heatmatch::rank(starter(), yard, options);
    const auto find = [&](const char* bank) -> const Candidate* {
        for (const Candidate& candidate : ranking.candidates) {
            if (contains(candidate.circuit.title(), "4S1P") &&
                candidate.circuit.bank.hookup.label() == bank) {
                return &candidate;
            }
        }
        return nullptr;
    };
    const Candidate* one = find("1S1P");
    const Candidate* four = find("2S2P");
    REQUIRE(one != nullptr);
    REQUIRE(four != nullptr);
    CHECK(four->smallest_headroom() > one->smallest_headroom());
    CHECK(*four->price_to_buy > *one->price_to_buy);
}
