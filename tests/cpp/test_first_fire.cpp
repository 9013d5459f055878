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

/// The demo's circuit with a coil of which the limit is known.
Candidate with_known_coil() {
    Candidate candidate = standing();
    auto heat = std::make_shared<BankHeat>(*candidate.circuit.heat);
    heat->coil_limit_c = 1100.0;
    candidate.circuit.heat = heat;
    candidate.made = {};
    return candidate;
}

// Source: tolerance class 2 of a thermocouple of type K, 2.5 K or 0.75 %; from memory (IEC 60584).
TEST_CASE("a first fire stops before any limit that its thermocouple protects") {
    const Candidate candidate = with_known_coil();
    const double stop_c = *first_fire_stop_c(candidate);
    CHECK(stop_c <= limit_of(candidate, "sheath temperature") * (1.0 - 0.0075) + 1e-9);
    CHECK(stop_c <= limit_of(candidate, "store ceiling") * (1.0 - 0.0075) + 1e-9);
    CHECK(stop_c > 100.0);
    const std::string text = all_of(first_fire(candidate));
    for (const char* told : {"when the sheath reads", "sheath_c", "bed_c", "of cooling",
                             "disconnect", "licensed practice"}) {
        CHECK_MESSAGE(text.find(told) != std::string::npos, told);
    }
}

TEST_CASE("a sheath whose limit is not known has no temperature at which to stop") {
    Candidate candidate = standing();
    auto heat = std::make_shared<BankHeat>(*candidate.circuit.heat);
    heat->sheath.reset();
    candidate.circuit.heat = heat;
    candidate.made = {};
    CHECK_FALSE(first_fire_stop_c(candidate).has_value());
    const std::string text = all_of(first_fire(candidate));
    CHECK(text.find("not assessed") != std::string::npos);
    CHECK(text.find("when the sheath reads") == std::string::npos);
    CHECK(text.find("too hot is not assessed") != std::string::npos);
}

TEST_CASE("a coil whose limit is not known leaves no number to stop at, a weak one lowers it") {
    CHECK_FALSE(first_fire_stop_c(demo_standing()).has_value());
    CHECK(all_of(first_fire(demo_standing())).find("State the alloy") != std::string::npos);
    Candidate weak = with_known_coil();
    auto heat = std::make_shared<BankHeat>(*weak.circuit.heat);
    heat->coil_limit_c = 400.0;
    weak.circuit.heat = heat;
    weak.made = {};
    CHECK(*first_fire_stop_c(weak) < 400.0);
}

TEST_CASE("a first fire is refused without a store, or in water") {
    Candidate bare = standing();
    bare.circuit.heat.reset();
    CHECK(holds(refusal_of([&] { (void)first_fire(bare); }), "store"));
    Installation water = demo();
    water.store->medium = "water";
    CHECK(holds(refusal_of([&] { (void)first_fire(standing(water)); }), "a liquid"));
}
