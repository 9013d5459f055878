#include "refusal.hpp"
#include "two_circuits.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"

using heatmatch::assess_circuits;
using heatmatch::Candidate;
using heatmatch::Installation;
using heatmatch::Margin;

namespace {

std::vector<Candidate> assessed(const Installation& house) {
    return assess_circuits(starter(), house, {.memory = nullptr});
}

/// The demo's barn pair alone, into one rod.
Installation barn_alone() {
    Installation house = two_circuits();
    house.circuits.resize(1);
    return house;
}

std::string refused_by_assessing(const Installation& house) {
    return refusal_of<heatmatch::InvalidInput>([&] { static_cast<void>(assessed(house)); });
}

}  // namespace

TEST_CASE("a list of one circuit is assessed as that circuit alone") {
    Installation listed = demo();
    listed.circuits = {*listed.circuit};
    listed.circuit.reset();
    const std::vector<Candidate> circuits = assessed(listed);
    REQUIRE(circuits.size() == 1);
    const Candidate alone = heatmatch::assess(starter(), demo(), {.memory = nullptr});
    REQUIRE(circuits.front().margins().size() == alone.margins().size());
    for (std::size_t i = 0; i < alone.margins().size(); ++i) {
        const Margin& listed_one = circuits.front().margins()[i];
        CHECK(listed_one.sentence() == alone.margins()[i].sentence());
        CHECK(listed_one.headroom == alone.margins()[i].headroom);
        CHECK(listed_one.worst_severity == alone.margins()[i].worst_severity);
    }
    CHECK(circuits.front().remarks == alone.remarks);
    CHECK(circuits.front().objective() == alone.objective());
}

// Source: symmetry: the same legs at the same places with the same power, wired to one array of
// four panels or to two of two.
TEST_CASE("two circuits of one rod each are as hot as one circuit of both") {
    Installation apart = two_circuits();
    apart.circuits[0].group = apart.circuits[1].group;
    Installation together = apart;
    together.circuits.resize(1);
    together.circuits[0].panels = "2S2P";
    together.circuits[0].bank = "1S2P";
    for (Installation* house : {&apart, &together}) {
        // Without wire both have the same power; with one field unstated others are judged higher.
        house->runs.clear();
        house->devices.clear();
        for (auto& owned : house->panels) owned.rear_blocked = true;
    }
    const std::vector<Candidate> two = assessed(apart);
    const std::vector<Candidate> one = assessed(together);
    REQUIRE(two.size() == 2);
    for (const Candidate& each : two) {
        const double element_w = each.circuit.heat->store->others.front().element_w;
        CHECK(element_w == doctest::Approx(each.bright.element_power_w).epsilon(1e-9));
        const heatmatch::HeatPoint shared = each.circuit.heat->at(element_w);
        const heatmatch::HeatPoint heat = one.front().circuit.heat->at(element_w);
        CHECK(shared.w_per_cm == doctest::Approx(heat.w_per_cm).epsilon(1e-9));
        CHECK(shared.sheath_c == doctest::Approx(heat.sheath_c).epsilon(1e-6));
        CHECK(shared.bed_mean_c == doctest::Approx(heat.bed_mean_c).epsilon(1e-6));
        CHECK(shared.wall_c == doctest::Approx(heat.wall_c).epsilon(1e-6));
        CHECK(shared.lid_c == doctest::Approx(heat.lid_c).epsilon(1e-6));
        CHECK(shared.floor_c == doctest::Approx(heat.floor_c).epsilon(1e-6));
        CHECK(shared.stagnation_sheath_c ==
              doctest::Approx(heat.stagnation_sheath_c).epsilon(1e-6));
    }
}

TEST_CASE("a second circuit in the store makes no margin of heat kinder") {
    const std::vector<Candidate> alone = assessed(barn_alone());
    const std::vector<Candidate> both = assessed(two_circuits());
    REQUIRE(both.size() == 2);
    int hotter = 0;
    for (const Margin& before : alone.front().margins()) {
        const auto found = std::find_if(
            both.front().margins().begin(), both.front().margins().end(), [&](const Margin& after) {
                return after.name == before.name && after.subject == before.subject;
            });
        if (found == both.front().margins().end()) continue;
        CAPTURE(before.name);
        CAPTURE(before.subject);
        CHECK(static_cast<int>(found->worst_severity) >= static_cast<int>(before.worst_severity));
        if (!before.headroom || !found->headroom) continue;
        constexpr double rounding = 1e-6;
        CHECK(*found->headroom <= *before.headroom + rounding);
        if (*found->headroom < *before.headroom - 1e-3) ++hotter;
    }
    CHECK(hotter >= 5);
}

TEST_CASE("a limit counts only where limits open every circuit") {
    Installation house = two_circuits();
    const auto in_time = [](const Candidate& candidate) {
        return margin_of(candidate.margins(), "limit acts in time");
    };
    // The contactor that the limit drives is in the circuit of the barn alone.
    house.circuits[0].devices = {"dc-contactor-sealed-450-v", "snap-disc-manual-reset"};
    const std::vector<Candidate> circuits = assessed(house);
    CHECK(in_time(circuits[0]).severity == heatmatch::Severity::warning);
    CHECK(contains(in_time(circuits[0]).sentence(), "\"porch\""));
    const std::vector<Candidate> with_limits = assessed(two_circuits());
    CHECK_FALSE(contains(in_time(with_limits[0]).sentence(), "\"porch\""));
}

TEST_CASE("a disconnect named by two circuits needs poles for both") {
    Installation house = two_circuits();
    for (auto& circuit : house.circuits) circuit.devices = {"pv-isolator-2-pole"};
    const auto shared = [](const Installation& as) {
        return margin_of(assessed(as).front().margins(), "shared poles");
    };
    CHECK(shared(house).severity == heatmatch::Severity::danger);
    CHECK(contains(shared(house).sentence(), "need 4 poles; it has 2"));
    heatmatch::Control four = heatmatch::find_control(starter(), "pv-isolator-2-pole");
    four.poles = 4;
    house.parts.controls = {four};
    CHECK(shared(house).severity == heatmatch::Severity::none);
    four.poles.reset();
    four.dc_ratings.clear();
    house.parts.controls = {four};
    CHECK(shared(house).severity == heatmatch::Severity::not_assessed);
    CHECK(shared(house).worst_severity == heatmatch::Severity::danger);
    // One that no circuit names is a piece in each.
    CHECK(count_margins(assessed(two_circuits()).front().margins(), "shared poles") == 0);
}

TEST_CASE("assessing several circuits says so, and one circuit is asked for where one is meant") {
    const std::vector<Candidate> circuits = assessed(two_circuits());
    for (const Candidate& each : circuits) {
        const bool told = std::any_of(
            each.remarks.begin(), each.remarks.end(),
            [](const heatmatch::Sentence& remark) { return contains(remark, "all 2 circuits"); });
        CHECK(told);
    }
    CHECK(contains(refusal_of<heatmatch::InvalidInput>([&] {
                       static_cast<void>(heatmatch::assess(starter(), two_circuits(), {}));
                   }),
                   "assess_circuits"));
}

TEST_CASE("a ranking judges each pairing alone, with the runs of one circuit, and says so") {
    Installation house = two_circuits();
    house.panels.resize(2);
    house.elements = {{.element = "storage-rod-1000-240", .count = 2}};
    house.circuits[0].runs = {"home run"};
    heatmatch::WireRun second = house.runs.front();
    second.name = "second run";
    house.runs.push_back(second);
    house.circuits[1].runs = {"second run"};
    const heatmatch::Ranking ranking = heatmatch::rank(starter(), house, {.memory = nullptr});
    const bool told = std::any_of(
        ranking.remarks.begin(), ranking.remarks.end(),
        [](const heatmatch::Sentence& remark) { return contains(remark, "alone in the store"); });
    CHECK(told);
    REQUIRE_FALSE(ranking.candidates.empty());
    CHECK(ranking.candidates.front().circuit.runs.size() == demo().runs.size());
}

TEST_CASE("the bills of two circuits add up to the joint one, and share the budget") {
    Installation house = two_circuits();
    house.goals.budget = 1000.0;
    const std::vector<Candidate> circuits = assessed(house);
    const std::vector<heatmatch::Circuit> wired{circuits[0].circuit, circuits[1].circuit};
    const auto joint =
        joint_bill(wired, house, heatmatch::merged_parts(starter(), house)).typical();
    REQUIRE(joint);
    CHECK(*circuits[0].price_to_buy + *circuits[1].price_to_buy == doctest::Approx(*joint));
    CHECK(*circuits[1].bill.budget == doctest::Approx(1000.0 - *circuits[0].price_to_buy));
    const std::vector<Candidate> alone = assessed([&house] {
        house.circuits.resize(1);
        return house;
    }());
    CHECK(*circuits[0].price_to_buy == doctest::Approx(*alone.front().price_to_buy));
}

TEST_CASE("more panels or elements than are owned are refused, naming the circuits") {
    Installation panels = two_circuits();
    panels.circuits[1].group = "barn pair";
    CHECK(contains(refused_by_assessing(panels), "\"barn\", \"porch\""));
    Installation rods = two_circuits();
    rods.circuits[1].bank = "1S2P";
    // Others may be bought there: any number may be in place.
    CHECK_NOTHROW(static_cast<void>(assessed(rods)));
    rods.elements = {{.element = "storage-rod-1000-240", .count = 1},
                     {.element = "storage-rod-1000-240", .count = 1}};
    CHECK(contains(refused_by_assessing(rods), "at most 2"));
    CHECK_NOTHROW(static_cast<void>(assessed(two_circuits())));
}
