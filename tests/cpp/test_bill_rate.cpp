#include "demo.hpp"

#include <doctest/doctest.h>

#include "heatmatch/match/candidate/assess.hpp"

using namespace heatmatch;

TEST_CASE("prices in US dollars are converted at a stated rate, once") {
    Installation plain = demo();
    const Bill in_usd = assess_circuits(starter(), plain).front().bill;
    Installation converted = plain;
    converted.goals.currency = "EUR";
    converted.goals.per_usd = 0.9;
    const Bill in_eur = assess_circuits(starter(), converted).front().bill;
    REQUIRE(in_usd.typical());
    REQUIRE(in_eur.typical());
    CHECK(*in_eur.typical() == doctest::Approx(0.9 * *in_usd.typical()));
    CHECK(in_eur.currency == "EUR");
    CHECK(in_eur.remarks.size() == in_usd.remarks.size() + 1);
    converted.goals.per_usd.reset();
    CHECK(!assess_circuits(starter(), converted).front().bill.typical());
    const auto merged = merged_parts(starter(), plain);
    CHECK(merged.panels == merged_parts(merged, plain).panels);
}
