#include "long_run.hpp"
#include "recommended_by_rule.hpp"

#include <doctest/doctest.h>

#include "heatmatch/match/candidate/assess.hpp"
#include "heatmatch/match/rank/rank.hpp"

using heatmatch::AlternativeKind;
using heatmatch::Candidate;
using heatmatch::Installation;
using heatmatch::Ranking;

namespace {

/// The demo with every fact stated that may make a circuit a danger.
Installation stated_yard() {
    Installation yard = demo();
    yard.site.frames_bonded = true;
    yard.site.live_parts_enclosed = true;
    yard.store->vessel_bonded = true;
    yard.store->sheath_bonded = true;
    for (heatmatch::WireRun& run : yard.runs) {
        run.connector = "stud-stainless-two-nuts";
        run.owned_connectors = 4;
    }
    yard.parts.connectors = {heatmatch::find_connector(starter(), "stud-stainless-two-nuts")};
    yard.parts.connectors.front().voltage_rating_v = 1000.0;
    yard.parts.connectors.front().current_rating_a = 60.0;
    yard.parts.connectors.front().limit_c = 400.0;
    for (const char* id : {"storage-rod-1000-240", "tubular-1000-120", "oven-bake-2585-240"}) {
        heatmatch::Element element = heatmatch::find_element(starter(), id);
        element.alloy = "nicr-80-20";
        yard.parts.elements.push_back(element);
    }
    yard.elements = {{.element = "storage-rod-1000-240", .count = 4},
                     {.element = "tubular-1000-120", .count = 1},
                     {.any = heatmatch::ElementFilter{.family = {"oven bake"}}, .count = 2}};
    return yard;
}

/// Compares the answer of a ranking that keeps few rows with the rule on the whole list. Gives the
/// number of alternatives.
std::size_t check_answer(const Installation& installation) {
    const std::vector<Candidate> whole = by_rule::whole_list(installation);
    const by_rule::List list = by_rule::eligible(whole);
    const Ranking ranking =
        heatmatch::rank(starter(), installation, {.top = 1, .keep_rejected = 0});
    const Candidate* first = by_rule::recommended(list);
    REQUIRE(ranking.recommended.has_value() == (first != nullptr));
    CHECK(ranking.lacking.empty() == (first != nullptr));
    if (first == nullptr) {
        CHECK(ranking.alternatives.empty());
        return 0;
    }
    CHECK(ranking.recommended->circuit.title() == first->circuit.title());
    std::set<std::string> named{by_rule::parts_of(*first)};
    std::vector<std::pair<AlternativeKind, std::string>> wanted;
    for (std::size_t i = 0; i < heatmatch::alternative_words.size(); ++i) {
        const auto kind = static_cast<AlternativeKind>(i);
        const Candidate* other = by_rule::alternative(list, kind);
        if (other == nullptr || !named.insert(by_rule::parts_of(*other)).second) continue;
        wanted.emplace_back(kind, other->circuit.title());
    }
    std::vector<std::pair<AlternativeKind, std::string>> found;
    for (const heatmatch::Alternative& each : ranking.alternatives) {
        found.emplace_back(each.kind, each.candidate.circuit.title());
    }
    CHECK(found == wanted);
    return found.size();
}

}  // namespace

// Source: the rule, applied to every candidate with all its margins.
TEST_CASE("the recommendation and its alternatives are those of the rule on a small list") {
    Installation yard = demo();
    yard.panels.resize(2);
    yard.elements = {{.element = "storage-rod-1000-240", .count = 4}};
    CHECK(check_answer(yard) > 0);
}

// Source: the same.
TEST_CASE("the recommendation and its alternatives are those of the rule on the whole list" *
          doctest::skip(in_a_slow_build())) {
    SUBCASE("the demo, where an unstated fact may make each circuit a danger") {
        CHECK(check_answer(demo()) > 1);
    }
    SUBCASE("where every fact is stated") {
        CHECK(check_answer(stated_yard()) > 1);
    }
    SUBCASE("without a budget") {
        Installation yard = stated_yard();
        yard.goals.budget.reset();
        CHECK(check_answer(yard) > 1);
    }
    SUBCASE("with little money") {
        Installation yard = demo();
        yard.goals.budget = 40.0;
        check_answer(yard);
    }
    SUBCASE("with no money") {
        Installation yard = demo();
        yard.goals.budget = 0.0;
        check_answer(yard);
    }
    SUBCASE("where wire and elements are owned") {
        Installation yard = demo();
        yard.runs.front().wire = "pv-wire-12-awg";
        yard.runs.front().owned_m = 20.0;
        CHECK(check_answer(yard) > 1);
    }
    SUBCASE("in a dry place, where more volts may be touched") {
        Installation yard = demo();
        yard.site.wet = false;
        CHECK(check_answer(yard) > 1);
    }
    SUBCASE("where the wire at the element is chosen") {
        Installation yard = demo();
        yard.runs.back().wire = "choose";
        yard.panels.resize(2);
        yard.elements.resize(2);
        CHECK(check_answer(yard) > 0);
    }
    SUBCASE("without devices") {
        Installation yard = demo();
        yard.devices.clear();
        check_answer(yard);
    }
    SUBCASE("by power, without weather") {
        Installation yard = demo();
        yard.weather.reset();
        CHECK(check_answer(yard) > 1);
    }
}

TEST_CASE("the recommendation does not depend on the number of threads" *
          doctest::skip(in_a_slow_build())) {
    const Ranking one = heatmatch::rank(starter(), demo(), {.top = 0, .threads = 1});
    const Ranking seven = heatmatch::rank(starter(), demo(), {.top = 0, .threads = 7});
    REQUIRE(one.recommended);
    REQUIRE(seven.recommended);
    CHECK(one.candidates.empty());
    CHECK(one.recommended->circuit.title() == seven.recommended->circuit.title());
    REQUIRE(one.alternatives.size() == seven.alternatives.size());
    for (std::size_t i = 0; i < one.alternatives.size(); ++i) {
        CHECK(one.alternatives[i].candidate.circuit.title() ==
              seven.alternatives[i].candidate.circuit.title());
    }
}

TEST_CASE("a circuit that an unstated fact may make a danger is recommended only without another") {
    // A single panel of the barn is below the touch voltage of a dry place: there its bonding does
    // not matter. In a wet place nothing of this yard is below it.
    Installation yard = stated_yard();
    yard.panels = {yard.panels.front(), yard.panels.back()};
    const Ranking clear = heatmatch::rank(starter(), yard, {.top = 0});
    REQUIRE(clear.recommended);
    CHECK(clear.recommended->worst_severity() != heatmatch::Severity::danger);
    yard.site.frames_bonded.reset();
    yard.site.wet = false;
    const Ranking low = heatmatch::rank(starter(), yard, {.top = 0});
    REQUIRE(low.recommended);
    CHECK(low.recommended->worst_severity() != heatmatch::Severity::danger);
    CHECK(low.recommended->circuit.cold_voltage_v() <= 60.0);
    CHECK(low.recommended->objective() < clear.recommended->objective());
    yard.site.wet = true;
    const Ranking doubtful = heatmatch::rank(starter(), yard, {.top = 0});
    REQUIRE(doubtful.recommended);
    CHECK(doubtful.recommended->worst_severity() == heatmatch::Severity::danger);
    CHECK(doubtful.recommended->deciding_fact());
}

TEST_CASE("without a recommendation the one fact or purchase that is missing is named") {
    const auto lacking = [](const Installation& yard) {
        const Ranking ranking = heatmatch::rank(starter(), yard);
        CHECK_FALSE(ranking.recommended);
        CHECK(ranking.alternatives.empty());
        return ranking.lacking.text();
    };
    SUBCASE("the budget") {
        Installation yard = demo();
        yard.goals.budget = 10.0;
        yard.elements = {{.any = heatmatch::ElementFilter{.family = {"oven bake"}}, .count = 1}};
        const std::string said = lacking(yard);
        CAPTURE(said);
        CHECK(contains(said, "10 USD"));
        CHECK(contains(said, "The cheapest costs"));
    }
    SUBCASE("the store") {
        Installation yard = demo();
        yard.store.reset();
        const std::string said = lacking(yard);
        CAPTURE(said);
        CHECK(contains(said, "store"));
        CHECK(contains(said, "sheath temperature"));
    }
    SUBCASE("the run at the element") {
        Installation yard = demo();
        yard.runs.clear();
        yard.devices.clear();
        const std::string said = lacking(yard);
        CAPTURE(said);
        CHECK(contains(said, "run"));
        CHECK(contains(said, "terminal temperature"));
    }
    SUBCASE("several facts at once, each where it is written") {
        Installation yard = demo();
        heatmatch::Panel panel = heatmatch::find_panel(starter(), yard.panels[0].panel);
        panel.max_system_voltage_v.reset();
        yard.parts.panels = {panel};
        yard.panels.resize(1);
        for (heatmatch::WireRun& run : yard.runs) run.surroundings.air_c.reset();
        const std::string said = lacking(yard);
        CAPTURE(said);
        CHECK(contains(said, "parts.panels[0].max_system_voltage_v (voltage at record low)"));
        CHECK(contains(said, "runs[0].surroundings.air_c"));
    }
    SUBCASE("a price") {
        Installation yard = demo();
        heatmatch::Element element = heatmatch::find_element(starter(), "storage-rod-1000-240");
        element.price = {};
        yard.parts.elements = {element};
        yard.elements = {
            {.any = heatmatch::ElementFilter{.family = {"storage rod"}, .rated_v_min = 235.0},
             .count = 4}};
        const std::string said = lacking(yard);
        CAPTURE(said);
        CHECK(contains(said, "storage-rod-1000-240"));
        CHECK(contains(said, "price"));
    }
    SUBCASE("a device") {
        Installation yard = demo();
        yard.devices.resize(1);
        yard.devices.front().poles_used = 1;
        yard.panels.resize(1);
        const std::string said = lacking(yard);
        CAPTURE(said);
        CHECK_FALSE(said.empty());
    }
}

TEST_CASE("deciding margins are margins") {
    const auto margins = heatmatch::assess(starter(), demo()).margins();
    for (const std::string_view name : heatmatch::deciding_margins()) {
        CAPTURE(std::string(name));
        CHECK(count_margins(margins, name) > 0);
    }
}
