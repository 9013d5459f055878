#include "store_bench.hpp"

#include <doctest/doctest.h>

#include "heatmatch/match/candidate/advice.hpp"

using heatmatch::Advice;
using heatmatch::advise;
using heatmatch::Candidate;

namespace {

Candidate hot(const heatmatch::Installation& installation, std::string_view element, int count,
              double element_w) {
    Candidate candidate{.circuit = circuit_in(installation, element, count)};
    candidate.bright.element_power_w = element_w;
    return candidate;
}

/// Largest power of one element, of that bank in that store.
double largest(const heatmatch::Installation& installation, const heatmatch::Element& element,
               const Candidate& like, int count) {
    const auto store = heatmatch::fill_store(starter(), installation);
    return *heatmatch::bank_heat(store, element, like.circuit.bank.sheath, like.circuit.bank.alloy,
                                 count)
                ->largest_element_w(true);
}

}  // namespace

TEST_CASE("an element within its limits gets its largest power, and no other advice") {
    const Advice advice = advise(hot(drum(), "storage-rod-1000-240", 2, 100.0));
    CHECK(advice.within_limit);
    CHECK(*advice.largest_element_w > 100.0);
    CHECK(*advice.largest_w_per_cm == doctest::Approx(*advice.largest_element_w / 145.0));
    CHECK_FALSE(advice.elements);
    CHECK_FALSE(advice.heated_length_mm);
    REQUIRE(advice.sentences.size() == 1);
    CHECK(contains(advice.sentences.front(), "every bright day"));
}

// Each remedy is applied and computed again: it passes, and a slightly smaller one does not.
TEST_CASE("every remedy makes the bank pass, and hardly more than that") {
    const heatmatch::Installation installation = drum();
    const Candidate candidate = hot(installation, "tubular-1000-120", 2, 380.0);
    const Advice advice = advise(candidate);
    REQUIRE_FALSE(advice.within_limit);
    const heatmatch::Element& element = candidate.circuit.bank.element;

    REQUIRE(advice.elements);
    const int count = *advice.elements;
    CHECK(largest(installation, element, candidate, count) * count >= 760.0);
    CHECK(largest(installation, element, candidate, count - 1) * (count - 1) < 760.0);

    REQUIRE(advice.heated_length_mm);
    heatmatch::Element longer = element;
    longer.heated_length_mm = *advice.heated_length_mm;
    if (advice.length_fits) {
        CHECK(largest(installation, longer, candidate, 2) >= 380.0);
        longer.heated_length_mm = 0.99 * *advice.heated_length_mm;
        CHECK(largest(installation, longer, candidate, 2) < 380.0);
    }
    CHECK(advice.sentences.size() >= 3);
    // 1 in is 25.4 mm.
    const std::string metric = heatmatch::text_of(advice.sentences);
    const std::string us = heatmatch::text_of(advice.sentences, heatmatch::UnitSystem::us);
    const auto length = [&](double per_unit) {
        return "about " + heatmatch::format_number(*advice.heated_length_mm / per_unit, 3);
    };
    CHECK(contains(metric, length(1.0) + " mm each"));
    CHECK(contains(us, length(25.4) + " in each"));
    CHECK(contains(metric, heatmatch::format_number(*advice.largest_w_per_cm, 3) + " W/cm"));
    CHECK(contains(us, heatmatch::format_number(2.54 * *advice.largest_w_per_cm, 3) + " W/in"));
    CHECK_FALSE(contains(metric, "W/in"));
    CHECK_FALSE(contains(us, " mm"));
}

TEST_CASE("spacing helps where elements are crowded") {
    heatmatch::Installation installation = drum();
    installation.store->element_spacing_mm = 15.0;
    const Candidate start = hot(installation, "tubular-1000-120", 2, 1.0);
    const double close = *advise(start).largest_element_w;
    const Candidate candidate = hot(installation, "tubular-1000-120", 2, 1.05 * close);
    const Advice advice = advise(candidate);
    REQUIRE(advice.element_spacing_mm);
    CHECK(*advice.element_spacing_mm > 15.0);
    installation.store->element_spacing_mm = *advice.element_spacing_mm;
    CHECK(largest(installation, candidate.circuit.bank.element, candidate, 2) >=
          1.05 * close * (1.0 - 1e-9));
}

TEST_CASE("for an element that does not fit, the required number of legs is reported") {
    const Advice advice = advise(hot(drum(0.4, 0.45), "storage-rod-1000-240", 1, 100.0));
    REQUIRE(advice.legs);
    CHECK(*advice.legs == 4);  // 1450 mm in 362 mm legs, 100 mm apart
    CHECK(contains(advice.sentences.back(), "Bent into 4 legs"));
}

TEST_CASE("without a store, lengths or a known sheath only that is reported") {
    Candidate candidate{
        .circuit = bench_circuit("silicon-60-cell-245", {2, 1}, "storage-rod-1000-240", {1, 1})};
    CHECK(contains(advise(candidate).sentences.front(), "No store"));
    CHECK(contains(advise(hot(drum(), "silicone-pad-250-120", 1, 50.0)).sentences.front(),
                   "heated_length_mm"));
}
