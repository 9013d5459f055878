#include "dice.hpp"
#include "refusal.hpp"
#include "two_circuits.hpp"
#include "unlike_circuits.hpp"
#include "within.hpp"

#include <algorithm>
#include <map>
#include <set>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/match/margins/element_margins.hpp"
#include "heatmatch/match/margins/sheath_margins.hpp"

using heatmatch::Candidate;

TEST_CASE("the heat of a bank is that of its hottest element, and all lie in one bed") {
    const Candidate candidate = unlike_candidate("[rod-a + rod-b] | rod-c");
    const auto seen = heatmatch::elements_seen(candidate.circuit, candidate.bright);
    REQUIRE(seen.size() == 3);
    const auto hottest = heatmatch::heat_of(candidate.circuit, candidate.bright);
    REQUIRE(hottest);
    double most_c = 0.0;
    for (const auto& one : seen) {
        REQUIRE(one.heat);
        most_c = std::max(most_c, one.heat->sheath_c);
        CHECK(one.circuit.heat->store->others.size() == 2);
        CHECK(one.circuit.heat->store->other_circuits() == 0);
        // All have the same bulk and faces: they are of one store.
        CHECK(one.heat->bed_mean_c == doctest::Approx(seen[0].heat->bed_mean_c).epsilon(1e-9));
        // Legs of unlike lengths: the spot of the wall is that of each one's height.
        CHECK(within_abs(one.heat->wall_c, seen[0].heat->wall_c, 0.5));
        // The others of its own bank stay in the bed without other circuits.
        const auto alone = one.circuit.heat->without_others();
        CHECK(alone.store->others.size() == 2);
        CHECK(alone.at(one.bright.element_power_w).sheath_c == one.heat->sheath_c);
    }
    CHECK(hottest->sheath_c == most_c);
    CHECK_THROWS_AS(static_cast<void>(candidate.circuit.heat->at(100.0)), heatmatch::InvalidInput);
    CHECK(candidate.circuit.heat->known());
    CHECK(candidate.circuit.heat->heated_length_m == doctest::Approx(3.3));
}
