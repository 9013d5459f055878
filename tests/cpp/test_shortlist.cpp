#include "dice.hpp"
#include "match/rank/shortlist.hpp"

#include <vector>

#include <doctest/doctest.h>

using heatmatch::BestOfStrong;
using heatmatch::Pairing;
using heatmatch::Shortlist;

namespace {

Pairing random_pairing(Dice& dice, std::size_t number) {
    return {.group = number,
            .objective = dice.between(10.0, 20.0),
            .headroom = dice.between(0.0, 0.5),
            .price = 10.0 * dice.from(0, 6),
            .parts = dice.from(1, 5),
            .doubtful = dice.coin(),
            .settled = dice.coin(),
            .below_touch = dice.coin()};
}

/// The first by an order among those with at least that share of the largest objective.
const Pairing* slowly(const std::vector<Pairing>& all, double share, BestOfStrong::Before before) {
    double most = 0.0;
    for (const Pairing& pairing : all) most = std::max(most, pairing.objective);
    const Pairing* first = nullptr;
    for (const Pairing& pairing : all) {
        if (pairing.objective < share * most) continue;
        if (first == nullptr || before(pairing, *first)) first = &pairing;
    }
    return first;
}

}  // namespace

// Source: the definition, applied to the whole stream.
TEST_CASE("the best of strong pairings of a stream is that of the whole list") {
    Dice dice(11);
    for (int trial = 0; trial < 200; ++trial) {
        std::vector<Pairing> all;
        const double share = dice.coin() ? 0.95 : 0.5;
        BestOfStrong stream(share, &heatmatch::recommended_before);
        BestOfStrong other(share, &heatmatch::recommended_before);
        for (std::size_t i = 0; i < 60; ++i) {
            all.push_back(random_pairing(dice, i));
            (i % 3 == 0 ? other : stream).offer(all.back());
        }
        stream.take(other);
        const Pairing* wanted = slowly(all, share, &heatmatch::recommended_before);
        REQUIRE(stream.best() != nullptr);
        CHECK(stream.best()->group == wanted->group);
    }
}

TEST_CASE("a pairing that may not enter a shortlist would not change it") {
    Dice dice(12);
    for (int trial = 0; trial < 100; ++trial) {
        Shortlist strict;
        Shortlist loose;
        for (std::size_t i = 0; i < 40; ++i) {
            const Pairing pairing = random_pairing(dice, i);
            Pairing at_best = pairing;
            at_best.objective *= 1.05;
            at_best.headroom += 0.1;
            at_best.price *= 0.9;
            at_best.parts = 0;
            if (strict.may_enter(at_best)) strict.offer(pairing);
            loose.offer(pairing);
        }
        REQUIRE(strict.empty() == loose.empty());
        if (loose.empty()) continue;
        CHECK(strict.recommended()->group == loose.recommended()->group);
        for (std::size_t k = 0; k < heatmatch::alternative_words.size(); ++k) {
            const auto kind = static_cast<heatmatch::AlternativeKind>(k);
            const Pairing* a = strict.alternative(kind);
            const Pairing* b = loose.alternative(kind);
            REQUIRE((a == nullptr) == (b == nullptr));
            if (a != nullptr) CHECK(a->group == b->group);
        }
    }
}

TEST_CASE("what an unstated fact may make a danger counts only where nothing else is there") {
    Shortlist list;
    CHECK(list.empty());
    list.offer({.group = 1, .objective = 9.0, .doubtful = true, .settled = true});
    REQUIRE(list.recommended() != nullptr);
    CHECK(list.recommended()->group == 1);
    list.offer({.group = 2, .objective = 3.0, .settled = true});
    CHECK(list.recommended()->group == 2);
    list.offer({.group = 3, .objective = 5.0});
    CHECK(list.recommended()->group == 2);
}

TEST_CASE("headroom counts in steps of a twentieth up to three tenths") {
    CHECK(heatmatch::recommended_step(-1.0) == 0);
    CHECK(heatmatch::recommended_step(0.049) == 0);
    CHECK(heatmatch::recommended_step(0.05) == 1);
    CHECK(heatmatch::recommended_step(0.15) == 3);
    CHECK(heatmatch::recommended_step(0.299) == 5);
    CHECK(heatmatch::recommended_step(0.30) == 6);
    CHECK(heatmatch::recommended_step(0.90) == 6);
}
