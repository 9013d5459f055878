#include "operation_bench.hpp"
#include "refusal.hpp"

#include <algorithm>
#include <string>

#include <doctest/doctest.h>

#include "heatmatch/operation/calibration/first_fire.hpp"

using namespace heatmatch;

namespace {

std::string all_of(const Sentences& told) {
    std::string text;
    for (const Sentence& each : told) text += each.text() + '\n';
    return text;
}

double limit_of(const Candidate& candidate, std::string_view name) {
    return *std::find_if(candidate.margins().begin(), candidate.margins().end(),
                         [name](const Margin& each) { return each.name == name; })
                ->limit;
}

}  // namespace

// Source: tolerance class 2 of a thermocouple of type K, 2.5 K or 0.75 %; from memory (IEC 60584).
TEST_CASE("a first fire stops before any limit that its thermocouple stands for") {
    const Candidate& candidate = demo_standing();
    const double stop_c = *first_fire_stop_c(candidate);
    CHECK(stop_c <= limit_of(candidate, "sheath temperature") * (1.0 - 0.0075) + 1e-9);
    CHECK(stop_c <= limit_of(candidate, "store ceiling") * (1.0 - 0.0075) + 1e-9);
    CHECK(stop_c > 100.0);
    const std::string text = all_of(first_fire(candidate));
    for (const char* told : {"Stop when the sheath reads", "sheath_c", "bed_c", "of cooling",
                             "isolator", "licensed practice"}) {
        CHECK_MESSAGE(text.find(told) != std::string::npos, told);
    }
}

TEST_CASE("a sheath whose limit is not known has no number to stop at") {
    Candidate candidate = standing();
    auto heat = std::make_shared<BankHeat>(*candidate.circuit.heat);
    heat->sheath.reset();
    candidate.circuit.heat = heat;
    candidate.made = {};
    CHECK_FALSE(first_fire_stop_c(candidate).has_value());
    const std::string text = all_of(first_fire(candidate));
    CHECK(text.find("not assessed") != std::string::npos);
    CHECK(text.find("Stop when the sheath reads") == std::string::npos);
    CHECK(text.find("change the pairing first") != std::string::npos);
}

TEST_CASE("nothing is told of a fire without a store, or in water") {
    Candidate bare = standing();
    bare.circuit.heat.reset();
    CHECK(holds(refusal_of([&] { (void)first_fire(bare); }), "store"));
    Installation water = demo();
    water.store->medium = "water";
    CHECK(holds(refusal_of([&] { (void)first_fire(standing(water)); }), "a liquid"));
}
