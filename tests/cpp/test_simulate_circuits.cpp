#include "operation_bench.hpp"
#include "refusal.hpp"
#include "two_circuits.hpp"

#include <array>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/operation/days/stagnation.hpp"

using namespace heatmatch;

namespace {

std::vector<Candidate> lived_circuits(const Installation& house) {
    return assess_circuits(starter(), house, {.memory = nullptr});
}

const DayWeather& january() {
    static const DayWeather weather = day_weather(demo_year(), january_days().span);
    return weather;
}

/// Two circuits of the porch panels, and one of the same panels and rods.
struct Halves {
    Installation apart = two_circuits();
    Installation together = two_circuits();

    Halves() {
        for (Installation* house : {&apart, &together}) {
            for (auto& circuit : house->circuits) circuit.group = "porch four";
            house->runs.clear();
            house->devices.clear();
        }
        together.circuits.resize(1);
        together.circuits[0].panels = "2S2P";
        together.circuits[0].bank = "1S2P";
    }
};

}  // namespace

TEST_CASE("one circuit lives as it does alone") {
    const Candidate candidate = standing();
    const DayRun alone = simulate_day(candidate, january(), january_days());
    const DayRun listed =
        simulate_circuits({&candidate, 1}, {&january(), 1}, january_days()).front();
    CHECK(listed.series.sheath_c == alone.series.sheath_c);
    CHECK(listed.energy.delivered_kwh == alone.energy.delivered_kwh);
    CHECK(listed.remarks == alone.remarks);
}

// Source: symmetry: the same rods at the same places with the same power.
TEST_CASE("two circuits of one rod each live as one circuit of both") {
    const Halves halves;
    const std::vector<Candidate> two = lived_circuits(halves.apart);
    const std::vector<Candidate> one = lived_circuits(halves.together);
    const std::vector<DayRun> apart = simulate_circuits(two, {&january(), 1}, january_days());
    const DayRun together = simulate_circuits(one, {&january(), 1}, january_days()).front();
    REQUIRE(apart.size() == 2);
    CHECK(apart[0].energy.delivered_kwh + apart[1].energy.delivered_kwh ==
          doctest::Approx(together.energy.delivered_kwh).epsilon(1e-4));
    for (const DayRun& run : apart) {
        // Legs of another circuit count with their finite length, hotter by up to a kelvin.
        CHECK(highest(run.series.sheath_c) > highest(together.series.sheath_c) - 0.05);
        CHECK(highest(run.series.sheath_c) < highest(together.series.sheath_c) + 1.0);
        CHECK(highest(run.series.wall_c) > highest(together.series.wall_c) - 0.05);
        CHECK(highest(run.series.wall_c) < highest(together.series.wall_c) + 1.0);
        CHECK(run.energy.stored_kwh == doctest::Approx(together.energy.stored_kwh).epsilon(1e-4));
        CHECK(run.energy.unbalanced_share < 1e-6);
    }
}

TEST_CASE(
    "a second circuit makes the sheath of the first hotter, and its own controls are its own") {
    const std::vector<Candidate> both = lived_circuits(two_circuits());
    Installation single = two_circuits();
    single.circuits.resize(1);
    const std::vector<Candidate> barn = lived_circuits(single);
    const std::vector<DayRun> runs = simulate_circuits(both, {&january(), 1}, january_days());
    const DayRun alone = simulate_circuits(barn, {&january(), 1}, january_days()).front();
    CHECK(highest(runs[0].series.sheath_c) > highest(alone.series.sheath_c));
    CHECK(runs[0].series.bed_mean_c == runs[1].series.bed_mean_c);
    CHECK(runs[0].energy.stored_kwh == runs[1].energy.stored_kwh);
    CHECK(runs[0].circuits == 2);
    CHECK(alone.circuits == 1);
    CHECK(highest(runs[0].series.sheath_c) > highest(runs[1].series.sheath_c));
}

TEST_CASE("circuits of a store stagnate together, in a bed and in water") {
    Installation house = two_circuits();
    for (const char* medium : {"dry-sand", "water"}) {
        CAPTURE(medium);
        house.store->medium = medium;
        const std::vector<Candidate> both = lived_circuits(house);
        const std::vector<Stagnation> found = simulate_stagnations(both);
        REQUIRE(found.size() == 2);
        Installation single = house;
        single.circuits.resize(1);
        const Stagnation alone = simulate_stagnations(lived_circuits(single)).front();
        CHECK(highest(found[0].run.series.bed_mean_c) > highest(alone.run.series.bed_mean_c));
        CHECK(found[0].peaks.size() == alone.peaks.size());
    }
}

TEST_CASE("a circuit that shares its store is not simulated alone, nor with unlike weathers") {
    const std::vector<Candidate> both = lived_circuits(two_circuits());
    CHECK(contains(
        refusal_of<InvalidInput>([&] { static_cast<void>(simulate_day(both[0], january())); }),
        "shared by 2 circuits"));
    const std::array<DayWeather, 2> unlike{january(), even_days(1, 500.0, 0.0)};
    CHECK(contains(
        refusal_of<InvalidInput>([&] { static_cast<void>(simulate_circuits(both, unlike)); }),
        "same rows"));
    CHECK_THROWS_AS(static_cast<void>(simulate_circuits(both, std::span<const DayWeather>{})),
                    InvalidInput);
    CHECK(simulate_circuits({}, {&january(), 1}).empty());
}
