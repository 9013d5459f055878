#include "demo.hpp"
#include "within.hpp"

#include <optional>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/match/candidate/assess.hpp"
#include "heatmatch/match/rank/rank.hpp"

using heatmatch::Installation;
using heatmatch::InvalidInput;
using heatmatch::OwnedPanels;
using heatmatch::Ranking;

namespace {

Ranking ranking_of(const Installation& installation) {
    return heatmatch::rank(starter(), installation, {.top = 20});
}

double heat_of(const OwnedPanels& owned) {
    Installation own = small();
    own.panels = {owned};
    own.circuit = heatmatch::ExistingCircuit{.group = owned.group,
                                             .panels = "2S1P",
                                             .element = own.elements.front().element,
                                             .bank = "1S1P"};
    return heatmatch::assess(starter(), own).season->kwh;
}

OwnedPanels pair_in_shade(double shade_pct, std::optional<int> substrings = {}) {
    OwnedPanels owned = demo().panels.front();
    owned.shade_pct = {shade_pct};
    owned.count = 2;
    owned.bypass_diodes = 3;
    owned.shaded_substrings = substrings;
    return owned;
}

}  // namespace

// Source: at any current a substring in light has more volts than the same one in shade.
TEST_CASE("shade on all substrings gives least heat, and fewer of them never less") {
    const double all = heat_of(pair_in_shade(70.0));
    const double three = heat_of(pair_in_shade(70.0, 3));
    const double two = heat_of(pair_in_shade(70.0, 2));
    const double one = heat_of(pair_in_shade(70.0, 1));
    OwnedPanels open = pair_in_shade(0.0);
    open.shade_pct.clear();
    CHECK(within(three, all, 2e-3));  // condensed apart
    CHECK(three < two);
    CHECK(two < one);
    CHECK(one < heat_of(open));
    // Without bypass diodes one shaded cell holds the whole panel.
    OwnedPanels bare = pair_in_shade(70.0, 1);
    bare.bypass_diodes = 0;
    CHECK(within(heat_of(bare), all, 2e-3));
}

TEST_CASE("a ranking with partly shaded panels has the heat of their assessment") {
    Installation own = small();
    own.panels = {pair_in_shade(70.0, 1)};
    const Ranking ranking = ranking_of(own);
    REQUIRE(!ranking.candidates.empty());
    const auto& best = ranking.candidates.front();
    own.circuit = heatmatch::ExistingCircuit{.group = own.panels.front().group,
                                             .panels = best.circuit.panels.label(),
                                             .element = best.circuit.bank.element.id,
                                             .bank = best.circuit.bank.hookup.label()};
    CHECK(within(heatmatch::assess(starter(), own).season->kwh, best.season->kwh, 1e-12));
}

// Source: arithmetic: 0.5 V of a string are lost; two panels near 30 V each lose 1 to 3 %.
TEST_CASE("a blocking diode takes its volts once a string, from the heat alone") {
    OwnedPanels owned = demo().panels.front();
    owned.count = 2;
    const double without = heat_of(owned);
    owned.blocking = true;
    const double with_diode = heat_of(owned);
    CHECK(with_diode < without);
    CHECK(with_diode > 0.97 * without);
    Installation own = small();
    own.panels = {owned};
    const Ranking ranking = ranking_of(own);
    own.panels.front().blocking.reset();
    const Ranking plain = ranking_of(own);
    REQUIRE(ranking.candidates.size() == plain.candidates.size());
    CHECK(ranking.candidates[0].season->kwh < plain.candidates[0].season->kwh);
    CHECK(ranking.candidates[0].smallest_headroom() == plain.candidates[0].smallest_headroom());
}

TEST_CASE("shaded substrings without a shade, or more than there are, are refused") {
    OwnedPanels owned = demo().panels.front();
    owned.shaded_substrings = 1;
    CHECK_THROWS_WITH_AS(heatmatch::check_owned_panels(owned, "panels"),
                         doctest::Contains("shade_pct"), InvalidInput);
    CHECK_THROWS_WITH_AS(heatmatch::check_owned_panels(pair_in_shade(50.0, 4), "panels"),
                         doctest::Contains("at most 3"), InvalidInput);
}
