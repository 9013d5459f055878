#include "two_circuits.hpp"

#include <memory>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/match/plan/plan_judge.hpp"
#include "heatmatch/solar/own_weather.hpp"

using heatmatch::Candidate;
using heatmatch::ExistingCircuit;
using heatmatch::Installation;
using heatmatch::PlanJudge;
using heatmatch::PlanVerdict;

namespace {

PlanJudge judge_of(const Installation& yard) {
    heatmatch::Sentences remarks;
    return {std::make_shared<const heatmatch::Parts>(starter()),
            yard,
            {},
            heatmatch::own_weather(yard, remarks)};
}

}  // namespace

// Source: assess_circuits(), which judges the same circuits with their season.
TEST_CASE("circuits are judged as they are assessed") {
    for (const bool both : {false, true}) {
        Installation house = two_circuits();
        if (!both) house.circuits.resize(1);
        const PlanJudge judge = judge_of(house);
        const PlanVerdict verdict = judge.judge(house.circuits);
        const std::vector<Candidate> assessed =
            heatmatch::assess_circuits(starter(), judge.with(house.circuits));
        bool danger = false;
        double headroom = 1.0;
        std::vector<double> element_w;
        for (const Candidate& candidate : assessed) {
            danger = danger || candidate.severity() == heatmatch::Severity::danger;
            headroom = std::min(headroom, candidate.smallest_headroom());
            element_w.push_back(candidate.bright.element_power_w);
        }
        CHECK(verdict.danger == danger);
        CHECK(verdict.headroom == doctest::Approx(headroom).epsilon(1e-12));
        CHECK(verdict.element_w == element_w);
        CHECK(verdict.assessed);
        CHECK(verdict.heat_headroom >= verdict.headroom);
    }
}

TEST_CASE("only what the installation owns is not to buy") {
    const Installation house = two_circuits();
    const PlanJudge judge = judge_of(house);
    ExistingCircuit circuit = house.circuits.front();
    circuit.bank = "1S2P";
    const PlanVerdict two_rods = judge.price({&circuit, 1});
    circuit.bank = "1S3P";
    const PlanVerdict three_rods = judge.price({&circuit, 1});
    const double rod = *heatmatch::find_element(starter(), circuit.element).price.typical();
    CHECK(three_rods.price - two_rods.price == doctest::Approx(rod));
    CHECK(three_rods.parts == two_rods.parts + 1);
    CHECK(two_rods.affordable);
}

TEST_CASE("too many elements for the store are a danger") {
    Installation house = two_circuits();
    house.store->diameter_m = 0.2;
    house.circuits[0].bank = "1S4P";
    house.circuits[1].bank = "1S4P";
    const PlanVerdict verdict = judge_of(house).judge(house.circuits);
    CHECK(verdict.danger);
    CHECK(verdict.reason == "fit in store");
    CHECK(!verdict.good());
}

TEST_CASE("the order of circuits in the store does not depend on how they are listed") {
    Installation house = two_circuits();
    const PlanJudge judge = judge_of(house);
    const PlanVerdict one = judge.judge(house.circuits);
    std::swap(house.circuits[0], house.circuits[1]);
    const PlanVerdict other = judge.judge(house.circuits);
    CHECK(one.headroom == other.headroom);
    CHECK(one.price == other.price);
}
