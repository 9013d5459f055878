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
using heatmatch::Installation;
using heatmatch::Margin;
using heatmatch::Severity;

namespace {

std::string refused_layout(const Installation& house) {
    return refusal_of<heatmatch::Error>([&] { static_cast<void>(unlike_candidate(house)); });
}

std::vector<std::string> subjects_of(const Candidate& candidate, const std::string& name) {
    std::vector<std::string> subjects;
    for (const Margin& margin : candidate.margins()) {
        if (margin.name == name) subjects.push_back(margin.subject);
    }
    return subjects;
}

const Margin* margin_at(const Candidate& candidate, const std::string& name,
                        const std::string& subject) {
    const auto& margins = candidate.margins();
    const auto found = std::find_if(margins.begin(), margins.end(), [&](const Margin& margin) {
        return margin.name == name && margin.subject == subject;
    });
    return found == margins.end() ? nullptr : &*found;
}

int badness_of(const Margin& margin) {
    return static_cast<int>(margin.worst_severity);
}

}  // namespace

// Source: the demo's own circuit: equal elements written as a tree are that circuit, to the bit.
TEST_CASE("equal elements written as a layout are assessed as their hook-up") {
    Installation house = demo();
    const Candidate before = unlike_candidate(house);
    const std::string id = house.circuit->element;
    house.circuit->element.clear();
    house.circuit->bank.clear();
    house.circuit->elements = id + " | " + id;
    const Candidate after = unlike_candidate(house);
    REQUIRE(after.margins().size() == before.margins().size());
    for (std::size_t i = 0; i < before.margins().size(); ++i) {
        CHECK(after.margins()[i].sentence() == before.margins()[i].sentence());
        CHECK(after.margins()[i].headroom == before.margins()[i].headroom);
        CHECK(after.margins()[i].worst_severity == before.margins()[i].worst_severity);
    }
    CHECK(after.objective() == before.objective());
    CHECK(after.circuit.title() == before.circuit.title());
}

TEST_CASE("every element of an unlike bank has its own margins, and the rest is judged once") {
    const Candidate candidate = unlike_candidate("[rod-a + rod-b] | rod-c");
    const std::set<std::string> expected{"element \"rod-a\"", "element \"rod-b\"",
                                         "element \"rod-c\""};
    for (const char* name :
         {"element power", "element voltage", "sheath voltage", "survivor power", "earth fault",
          "built-in control", "fit in store", "sheath temperature", "coil temperature",
          "settled sand", "stagnation", "survivor sheath", "terminal temperature", "end seal",
          "element covered"}) {
        CAPTURE(std::string(name));
        const std::vector<std::string> subjects = subjects_of(candidate, name);
        const bool of_store = std::string(name) == "stagnation";
        if (of_store) continue;
        CHECK(std::set<std::string>(subjects.begin(), subjects.end()) == expected);
        CHECK(subjects.size() == expected.size());
    }
    for (const char* name : {"shade stress", "voltage drop", "wall and lid", "store ceiling",
                             "floor", "pressure", "limit acts in time"}) {
        CAPTURE(std::string(name));
        CHECK(subjects_of(candidate, name).size() == 1);
    }
    // No margin is listed twice with one name and subject, as with equal elements.
    std::map<std::pair<std::string, std::string>, int> count;
    for (const Margin& margin : candidate.margins()) ++count[{margin.name, margin.subject}];
    const Candidate equal = unlike_candidate(demo());
    std::map<std::pair<std::string, std::string>, int> count_of_equal;
    for (const Margin& margin : equal.margins()) ++count_of_equal[{margin.name, margin.subject}];
    for (const auto& [key, times] : count) {
        CAPTURE(key.first);
        const auto of_equal = count_of_equal.find(key);
        CHECK(times <= (of_equal == count_of_equal.end() ? 1 : of_equal->second));
    }
    for (const Margin& margin : equal.margins()) {
        CAPTURE(margin.name);
        CHECK_FALSE(subjects_of(candidate, margin.name).empty());
    }
}

// Source: Tellegen's theorem and Ohm's law at the bright point of typical resistances.
TEST_CASE("the loads of all elements together are those of the bank") {
    const Candidate candidate = unlike_candidate("[rod-a + rod-b] | rod-c");
    const auto& bank = candidate.circuit.bank;
    const auto& loads = candidate.bright.elements;
    REQUIRE(loads.size() == 3);
    double sum_w = 0.0;
    for (std::size_t i = 0; i < loads.size(); ++i) {
        const Margin* power = margin_at(candidate, "element power", bank.unlike->title_of(i));
        REQUIRE(power != nullptr);
        CHECK(*power->value == loads[i].power_w);
        sum_w += loads[i].power_w;
    }
    const auto typical =
        heatmatch::deliver(candidate.circuit, candidate.site.bright_irradiance_w_m2,
                           candidate.site.record_low_c + 20.0);
    CHECK(sum_w > typical.power_w);
    const auto shares = bank.unlike->power_shares();
    double shared = 0.0;
    for (const double share : shares) shared += share * typical.power_w;
    CHECK(within(shared, typical.power_w, 1e-12));
    CHECK(candidate.bright.element_power_w ==
          std::max({loads[0].power_w, loads[1].power_w, loads[2].power_w}));
}

TEST_CASE("an element of worse data makes no margin of an unlike bank kinder") {
    const std::string layout = "[rod-a + rod-b] | rod-c";
    const Candidate good = unlike_candidate(layout);
    const auto spoiled = [&](auto change) {
        Installation house = unlike_house(layout);
        change(house.parts.elements[1]);
        return unlike_candidate(house);
    };
    const std::vector<Candidate> worse{
        spoiled([](heatmatch::Element& rod) {  // of the same resistance
            *rod.rated_v *= 0.5;
            *rod.rated_w *= 0.25;
        }),
        spoiled([](heatmatch::Element& rod) { rod.rated_dc.reset(); }),
        spoiled([](heatmatch::Element& rod) { rod.sheath.clear(); }),
        spoiled([](heatmatch::Element& rod) { rod.heated_length_mm.reset(); }),
        spoiled([](heatmatch::Element& rod) { rod.built_in_ac_control = true; }),
        spoiled([](heatmatch::Element& rod) { rod.terminal_limit_c = 60.0; }),
        spoiled([](heatmatch::Element& rod) { rod.rated_w.reset(); }),
        spoiled([](heatmatch::Element& rod) { rod.sheath = "copper"; })};
    for (std::size_t i = 0; i < worse.size(); ++i) {
        CAPTURE(i);
        CHECK(static_cast<int>(worse[i].worst_severity()) >=
              static_cast<int>(good.worst_severity()));
        for (const Margin& before : good.margins()) {
            const Margin* after = margin_at(worse[i], before.name, before.subject);
            if (after == nullptr) continue;
            CAPTURE(before.name);
            CAPTURE(before.subject);
            CHECK(badness_of(*after) >= badness_of(before));
        }
    }
}

TEST_CASE("layouts that are wrong are refused in one sentence each") {
    CHECK(contains(refused_layout(unlike_house("[rod-a + rod-d] | rod-c")), "rod-d"));
    CHECK(contains(refused_layout(unlike_house("rod-a x4 | rod-b x3")), "6 elements"));
    CHECK(contains(refused_layout(unlike_house("rod-a | ")), "a name is missing"));
    CHECK(contains(refused_layout(unlike_house("[rod-a + rod-b | rod-c")), "bracket"));
    Installation both = unlike_house("rod-a | rod-b");
    both.circuit->bank = "1S2P";
    CHECK(contains(refused_layout(both), "elements"));
    Installation none = unlike_house("rod-a");
    none.circuit->elements.clear();
    CHECK(contains(refused_layout(none), "elements"));
    Installation twice = two_circuits();
    twice.parts.elements = unlike_house("rod-a").parts.elements;
    twice.elements = {{.element = "rod-a", .count = 2}, {.element = "rod-b", .count = 1}};
    for (auto& circuit : twice.circuits) {
        circuit.element.clear();
        circuit.bank.clear();
        circuit.elements = "rod-a | rod-b";
    }
    CHECK(contains(refusal_of<heatmatch::InvalidInput>([&] {
                       static_cast<void>(heatmatch::assess_circuits(starter(), twice, {}));
                   }),
                   "rod-b"));
}

TEST_CASE("an unlike bank goes to JSON and back as it was") {
    const Installation house = unlike_house("[rod-a + rod-b] | rod-c");
    const std::string text = heatmatch::installation_to_json(house);
    CHECK(heatmatch::installation_from_json(text).circuit == house.circuit);
    CHECK_FALSE(contains(text, "\"bank\":"));
}

TEST_CASE("two circuits share a store where one has an unlike bank") {
    Installation house = two_circuits();
    house.parts.elements = unlike_house("rod-a").parts.elements;
    house.elements.push_back({.element = "rod-a", .count = 1});
    house.elements.push_back({.element = "rod-c", .count = 1});
    house.circuits[0].element.clear();
    house.circuits[0].bank.clear();
    house.circuits[0].elements = "rod-a | rod-c";
    const auto circuits = heatmatch::assess_circuits(starter(), house, {.memory = nullptr});
    REQUIRE(circuits.size() == 2);
    const auto& seen_by_porch = *circuits[1].circuit.heat->store;
    CHECK(seen_by_porch.others.size() == 2);
    CHECK(seen_by_porch.other_circuits() == 1);
    CHECK(seen_by_porch.circuits_before() == 1);
    CHECK(circuits[0].circuit.heat->store->other_circuits() == 1);
    for (const Candidate& each : circuits) {
        const bool told = std::any_of(
            each.remarks.begin(), each.remarks.end(),
            [](const heatmatch::Sentence& remark) { return contains(remark, "all 2 circuits"); });
        CHECK(told);
    }
    // The rod of the other circuit is hotter than without the unlike bank beside it.
    house.circuits.erase(house.circuits.begin());
    const auto alone = heatmatch::assess_circuits(starter(), house, {.memory = nullptr});
    const std::string rod = "element \"storage-rod-1000-240\"";
    CHECK(*margin_at(circuits[1], "sheath temperature", rod)->value >
          *margin_at(alone[0], "sheath temperature", rod)->value);
}
