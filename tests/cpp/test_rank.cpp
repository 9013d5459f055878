#include "demo.hpp"

#include <cmath>
#include <limits>
#include <set>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/match/rank/rank.hpp"

using heatmatch::Candidate;
using heatmatch::Installation;
using heatmatch::rank;
using heatmatch::Ranking;
using heatmatch::RankOptions;
using heatmatch::Severity;

namespace {

/// Hook-ups of up to that many things, counted one by one.
std::size_t hookups(int most) {
    std::size_t count = 0;
    for (int series = 1; series <= most; ++series) {
        for (int parallel = 1; series * parallel <= most; ++parallel) ++count;
    }
    return count;
}

/// Pairings an installation should give: groups x hook-ups x elements x banks.
std::size_t pairings_of(const Installation& installation, int max_bank) {
    std::map<std::string, int> most;
    for (const auto& allowed : installation.elements) {
        if (!allowed.any) {
            most[allowed.element] += allowed.count;
            continue;
        }
        const auto& families = allowed.any->family;
        for (const heatmatch::Element& element : starter().elements) {
            const bool family = families.empty() || std::find(families.begin(), families.end(),
                                                              element.family) != families.end();
            const auto price = element.price.typical();
            const auto& limit = allowed.any->price_max;
            if (family && (!limit || (price && *price <= *limit))) {
                most[element.id] += allowed.count;
            }
        }
    }
    std::size_t banks = 0;
    for (const auto& [id, count] : most) {
        const auto& element = heatmatch::find_element(starter(), id);
        const bool fixed =
            element.alloy.empty() ||
            heatmatch::find_alloy(starter(), element.alloy).fixed_resistance.value_or(true);
        if (fixed) banks += hookups(std::min(count, max_bank));
    }
    std::size_t arrays = 0;
    for (const auto& owned : installation.panels) arrays += hookups(owned.count);
    return arrays * banks;
}

/// Steps of 1 % from 1 kWh or 1 W on.
double objective_step(const Candidate& candidate) {
    return std::floor(std::log(candidate.objective()) / std::log(1.01) + 1e-9);
}

bool comes_first(const Candidate& a, const Candidate& b) {
    if (objective_step(a) != objective_step(b)) return objective_step(a) > objective_step(b);
    if (a.not_assessed() != b.not_assessed()) return a.not_assessed() < b.not_assessed();
    if (std::fabs(a.smallest_headroom() - b.smallest_headroom()) > 1e-12) {
        return a.smallest_headroom() > b.smallest_headroom();
    }
    const double none = std::numeric_limits<double>::infinity();
    return a.price_to_buy.value_or(none) <= b.price_to_buy.value_or(none);
}

bool has_danger(const Candidate& candidate) {
    return std::any_of(candidate.margins().begin(), candidate.margins().end(),
                       [](const auto& margin) { return margin.severity == Severity::danger; });
}

std::size_t counted(const Ranking& ranking, const std::string& reason) {
    const auto found = ranking.reasons.find(reason);
    return found == ranking.reasons.end() ? 0 : found->second;
}

/// The demo's panels with two of every element of the starter, at any price.
const Ranking& any_ranking() {
    static const Ranking ranking = [] {
        Installation any = demo();
        any.elements = {{.any = heatmatch::ElementFilter{}, .count = 2}};
        any.goals.budget.reset();
        return rank(starter(), any, keep_all());
    }();
    return ranking;
}

}  // namespace

TEST_CASE("no candidate has a danger, every rejected one has" * doctest::test_suite("numerical")) {
    for (const Ranking& ranking : {demo_ranking(), any_ranking()}) {
        CHECK(!ranking.candidates.empty());
        CHECK(!ranking.rejected.empty());
        const auto& kept = ranking.candidates;
        CHECK(std::none_of(kept.begin(), kept.end(), has_danger));
        CHECK(std::all_of(ranking.rejected.begin(), ranking.rejected.end(), has_danger));
    }
}

// Source: counted one by one in the test.
TEST_CASE("every group, element, bank and hook-up is looked at once" *
          doctest::test_suite("numerical")) {
    CHECK(demo_ranking().evaluated == pairings_of(demo(), 4));
    Installation installation = demo();
    installation.elements = {{.any = heatmatch::ElementFilter{}, .count = 3}};
    for (const int max_bank : {1, 2, 4, 6}) {
        RankOptions options{.max_bank = max_bank, .top = 0, .keep_rejected = 0};
        CHECK(rank(starter(), installation, options).evaluated ==
              pairings_of(installation, max_bank));
    }
}

TEST_CASE("screened pairings are kept, rejected or above the budget") {
    const Ranking& ranking = demo_ranking();
    std::size_t folded = 0;
    for (const Candidate& row : ranking.candidates) folded += static_cast<std::size_t>(row.like_it);
    CHECK(ranking.evaluated == ranking.candidates.size() + folded + ranking.rejected.size() +
                                   counted(ranking, "budget"));
    std::size_t reasons = 0;
    for (const auto& [reason, count] : ranking.reasons) reasons += count;
    CHECK(reasons == ranking.rejected.size() + counted(ranking, "budget"));
    std::set<std::string> titles;
    for (const Candidate& candidate : ranking.candidates) titles.insert(candidate.circuit.title());
    for (const Candidate& candidate : ranking.rejected) titles.insert(candidate.circuit.title());
    CHECK(titles.size() == ranking.candidates.size() + ranking.rejected.size());
}

// Source: the rule as written: heat in steps of 1 %, not assessed, headroom, price.
TEST_CASE("candidates come in the order of the rule" * doctest::test_suite("numerical")) {
    Installation without_weather = demo();
    without_weather.weather.reset();
    const Ranking by_power = rank(starter(), without_weather, keep_all());
    CHECK(demo_ranking().by_season);
    CHECK(!by_power.by_season);
    for (const Ranking& ranking : {demo_ranking(), any_ranking(), by_power}) {
        int wrong = 0;
        for (std::size_t i = 1; i < ranking.candidates.size(); ++i) {
            if (!comes_first(ranking.candidates[i - 1], ranking.candidates[i])) ++wrong;
        }
        CHECK(wrong == 0);
        for (std::size_t i = 1; i < ranking.rejected.size(); ++i) {
            CHECK(ranking.rejected[i - 1].objective() >=
                  ranking.rejected[i].objective() * (1.0 - 1e-12));
        }
    }
}

// Found by trying ohms of wide tolerance: the largest power of one of two lies between its ends.
TEST_CASE("elements of wide tolerance with one overloaded resistance are not kept") {
    Installation installation = small();
    installation.runs.clear();
    installation.devices.clear();
    installation.panels.front().count = 2;
    heatmatch::Element element = heatmatch::find_element(starter(), "tubular-1000-120");
    element.id = "wide";
    element.resistance_ohm = 11.0;
    element.rated_w = 351.0;
    element.power_tolerance_plus_pct = 10.0;
    element.power_tolerance_minus_pct = 50.0;
    element.alloy = "steady";  // cold ohms this far from the rating are those of a known alloy
    installation.parts.alloys = {{.id = "steady",
                                  .label = "Steady",
                                  .resistance_factor = {{20.0, 1.0}, {1000.0, 1.0}},
                                  .provenance = starter().alloys.front().provenance}};
    installation.parts.elements = {element};
    installation.elements = {{.element = "wide", .count = 2}};
    const Ranking ranking = rank(starter(), installation, keep_all());
    CHECK(std::none_of(ranking.candidates.begin(), ranking.candidates.end(), has_danger));
    CHECK(!ranking.rejected.empty());
}

TEST_CASE("a short list keeps the front whole") {
    const Ranking ranking = rank(starter(), demo(), {.top = 1, .keep_rejected = 0});
    CHECK(ranking.pareto.size() == demo_ranking().pareto.size());
}

TEST_CASE("the number of threads changes nothing") {
    for (const std::size_t threads : {1U, 7U}) {
        RankOptions options{.top = 30, .keep_rejected = 10, .threads = threads};
        const Ranking ranking = rank(starter(), demo(), options);
        CHECK(ranking.reasons == demo_ranking().reasons);
        REQUIRE(ranking.candidates.size() == 30);
        for (std::size_t i = 0; i < 30; ++i) {
            CHECK(ranking.candidates[i].circuit.title() ==
                  demo_ranking().candidates[i].circuit.title());
            CHECK(ranking.candidates[i].objective() == demo_ranking().candidates[i].objective());
        }
    }
}

TEST_CASE("a shorter list is the beginning of the longer one") {
    RankOptions options{.top = 7, .keep_rejected = 5};
    const Ranking ranking = rank(starter(), demo(), options);
    REQUIRE(ranking.candidates.size() == 7);
    REQUIRE(ranking.rejected.size() == 5);
    CHECK(ranking.evaluated == demo_ranking().evaluated);
    CHECK(ranking.reasons == demo_ranking().reasons);
    for (std::size_t i = 0; i < 7; ++i) {
        CHECK(ranking.candidates[i].circuit.title() ==
              demo_ranking().candidates[i].circuit.title());
    }
}

TEST_CASE("two runs give the same ranking") {
    // Of one group; the test of threads compares the whole demo with itself.
    RankOptions options = keep_all();
    options.group = "porch four";
    const Ranking once = rank(starter(), demo(), options);
    const Ranking again = rank(starter(), demo(), options);
    REQUIRE(again.candidates.size() == once.candidates.size());
    CHECK(again.candidates.size() > 5);
    for (std::size_t i = 0; i < again.candidates.size(); ++i) {
        const Candidate& a = again.candidates[i];
        const Candidate& b = once.candidates[i];
        CHECK(a.circuit.title() == b.circuit.title());
        CHECK(a.objective() == b.objective());
        CHECK(a.smallest_headroom() == b.smallest_headroom());
    }
    CHECK(again.remarks == once.remarks);
}

TEST_CASE("pairings above the budget are not kept, and counted") {
    Installation installation = demo();
    RankOptions options = keep_all();
    options.group = "porch four";
    options.fold = false;
    installation.goals.budget = 0.0;
    const Ranking nothing = rank(starter(), installation, options);
    for (const Candidate& candidate : nothing.candidates) CHECK(*candidate.price_to_buy == 0.0);
    installation.goals.budget.reset();
    const Ranking everything = rank(starter(), installation, options);
    CHECK(counted(nothing, "budget") > 0);
    CHECK(counted(everything, "budget") == 0);
    CHECK(everything.candidates.size() == nothing.candidates.size() + counted(nothing, "budget"));
    for (const Candidate& candidate : demo_ranking().candidates) {
        CHECK(*candidate.price_to_buy <= 150.0);
    }
}

TEST_CASE("a pairing whose price is not known is not called too dear") {
    Installation installation = small();
    installation.runs.clear();
    installation.devices.clear();
    installation.parts.elements = {heatmatch::find_element(starter(), "tubular-1000-120")};
    installation.parts.elements.front().price = {};
    installation.elements = {{.any = heatmatch::ElementFilter{.family = {"tubular"}}, .count = 1}};
    CHECK(counted(rank(starter(), installation, keep_all()), "budget") == 0);
}

TEST_CASE("elements without a fixed resistance are omitted, with a remark") {
    Installation installation = small();
    installation.elements.push_back({.element = "lamp-100-120", .count = 1});
    const Ranking ranking = rank(starter(), installation, keep_all());
    CHECK(ranking.evaluated == pairings_of(small(), 4));
    for (const Candidate& candidate : ranking.candidates) {
        CHECK(candidate.circuit.bank.element.id != "lamp-100-120");
    }
    CHECK(std::any_of(ranking.remarks.begin(), ranking.remarks.end(), [](const auto& remark) {
        return contains(remark, "left out: resistance not fixed");
    }));
}
