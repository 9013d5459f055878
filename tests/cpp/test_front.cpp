#include "match/rank/front.hpp"
#include "store_bench.hpp"

#include <algorithm>
#include <limits>
#include <random>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/match/rank/rank.hpp"

namespace {

struct Trade {
    double power_w = 0.0;
    double headroom = 0.0;
    double price = 0.0;
};

/// Indices of the front, found as the screen does: one after the other.
std::vector<std::size_t> pareto_front(const std::vector<Trade>& trades) {
    heatmatch::Front front;
    for (std::size_t i = 0; i < trades.size(); ++i) {
        const Trade& trade = trades[i];
        if (!front.may_enter(trade.power_w, trade.headroom, trade.price)) continue;
        front.offer({.group = i,
                     .objective = trade.power_w,
                     .headroom = trade.headroom,
                     .price = trade.price});
    }
    std::vector<std::size_t> indices;
    for (const heatmatch::Pairing& pairing : front.sorted()) indices.push_back(pairing.group);
    return indices;
}

int step(const Trade& trade) {
    return heatmatch::headroom_step(trade.headroom);
}

bool same(const Trade& a, const Trade& b) {
    return a.power_w == b.power_w && step(a) == step(b) && a.price == b.price;
}

bool as_good(const Trade& a, const Trade& b) {
    return a.power_w >= b.power_w && step(a) >= step(b) && a.price <= b.price;
}

/// Every trade against every other; of equal ones the first.
std::vector<std::size_t> front_by_hand(const std::vector<Trade>& trades) {
    std::vector<std::size_t> front;
    for (std::size_t i = 0; i < trades.size(); ++i) {
        bool kept = true;
        for (std::size_t j = 0; j < trades.size() && kept; ++j) {
            if (i == j || !as_good(trades[j], trades[i])) continue;
            kept = same(trades[i], trades[j]) && i < j;
        }
        if (kept) front.push_back(i);
    }
    return front;
}

void check(const std::vector<Trade>& trades) {
    const std::vector<std::size_t> front = pareto_front(trades);
    for (std::size_t k = 1; k < front.size(); ++k) {
        CHECK(trades[front[k - 1]].power_w >= trades[front[k]].power_w);
    }
    std::vector<std::size_t> sorted = front;
    std::sort(sorted.begin(), sorted.end());
    CHECK(sorted == front_by_hand(trades));
}

}  // namespace

TEST_CASE("nothing and one thing are their own front") {
    CHECK(pareto_front({}).empty());
    CHECK(pareto_front({{100.0, 0.5, 20.0}}) == std::vector<std::size_t>{0});
}

TEST_CASE("of equal trades the first is kept") {
    check({{100.0, 0.5, 20.0}, {100.0, 0.5, 20.0}, {100.0, 0.5, 20.0}});
    check({{90.0, 0.9, 5.0}, {100.0, 0.5, 20.0}, {90.0, 0.9, 5.0}});
    check(std::vector<Trade>(100, {100.0, 0.5, 20.0}));
}

TEST_CASE("each of the three can keep a trade") {
    check({{100.0, 0.1, 90.0}, {50.0, 0.9, 90.0}, {50.0, 0.1, 5.0}, {49.0, 0.1, 5.0}});
    const double unknown = std::numeric_limits<double>::infinity();
    check({{100.0, 0.1, unknown}, {50.0, 0.9, unknown}, {50.0, 0.1, 5.0}, {40.0, 0.9, unknown}});
    check({{100.0, -0.5, 0.0}, {100.0, 0.5, 0.0}, {100.0, 0.5, 1.0}});
}

// Source: the definition, tried on every pair.
TEST_CASE("the front of random trades with many ties is that of all pairs") {
    std::mt19937 random(20240611);
    for (const int values : {2, 3, 5, 10, 1000}) {
        std::uniform_int_distribution<int> draw(0, values);
        for (int round = 0; round < 60; ++round) {
            std::vector<Trade> trades;
            const int count = 1 + round * 3;
            for (int i = 0; i < count; ++i) {
                trades.push_back({static_cast<double>(draw(random)),
                                  static_cast<double>(draw(random)) / values,
                                  static_cast<double>(draw(random))});
            }
            CAPTURE(values);
            CAPTURE(round);
            check(trades);
        }
    }
}

TEST_CASE("a front of one dimension alone is a single trade") {
    std::vector<Trade> trades;
    for (int i = 0; i < 50; ++i) trades.push_back({static_cast<double>(i % 7), 0.5, 10.0});
    CHECK(pareto_front(trades).size() == 1);
    CHECK(trades[pareto_front(trades).front()].power_w == 6.0);
}

TEST_CASE("the front of the demo is beaten by no candidate in heat, headroom and price at once") {
    const auto price = [](const heatmatch::Candidate& candidate) {
        return candidate.price_to_buy.value_or(std::numeric_limits<double>::infinity());
    };
    CHECK(!demo_ranking().pareto.empty());
    for (const heatmatch::Candidate& front : demo_ranking().pareto) {
        for (const heatmatch::Candidate& other : demo_ranking().candidates) {
            const int step = heatmatch::headroom_step(front.smallest_headroom());
            const int other_step = heatmatch::headroom_step(other.smallest_headroom());
            const bool as_good = other.objective() >= front.objective() && other_step >= step &&
                                 price(other) <= price(front);
            const bool better = other.objective() > front.objective() * (1.0 + 1e-12) ||
                                other_step > step || price(other) < price(front);
            CHECK_FALSE((as_good && better));
        }
    }
}

// What is kept few of is turned away by bounds of its headroom, what is all kept never is; a bound
// that is too low would lose some of the front.
TEST_CASE("the front is the same however few of the best are kept") {
    // Owned, so no price decides, and no wire whose end would be hotter than a sheath.
    for (const char* element : {"tubular-1000-120", "storage-rod-1000-240", "strip-500-240"}) {
        for (const double diameter_m : {0.40, 0.57, 0.90}) {
            CAPTURE(std::string(element));
            CAPTURE(diameter_m);
            heatmatch::Installation installation = drum(diameter_m);
            installation.elements = {{.element = element, .count = 10}};
            installation.panels.resize(1);
            installation.panels.front().count = 8;
            installation.runs.clear();
            installation.devices.clear();
            installation.circuit.reset();
            installation.goals.budget.reset();
            const auto front_of = [&](const heatmatch::RankOptions& options) {
                std::vector<std::string> front;
                for (const auto& one : heatmatch::rank(starter(), installation, options).pareto) {
                    front.push_back(one.circuit.title());
                }
                return front;
            };
            const std::vector<std::string> all = front_of(keep_all());
            CHECK(all.size() > 1);
            CHECK(front_of({.top = 1, .keep_rejected = 1}) == all);
        }
    }
}
