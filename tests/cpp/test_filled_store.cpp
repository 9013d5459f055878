#include "store_bench.hpp"

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/match/circuit/filled_store.hpp"

using heatmatch::fill_store;
using heatmatch::Installation;

TEST_CASE("a store is filled with its medium, and unstated values are assumed and listed") {
    Installation installation = drum();
    const auto told = fill_store(starter(), installation);
    CHECK(told->medium.id == "dry-sand");
    CHECK(told->charge_hours == 6.0);
    CHECK(told->air_c == 25.0);
    installation.store->charge_hours.reset();
    installation.store->air_c.reset();
    const auto assumed = fill_store(starter(), installation);
    CHECK(assumed->air_c == 30.0);
    CHECK(assumed->assumed.size() == told->assumed.size() + 2);
    installation.store.reset();
    CHECK(fill_store(starter(), installation) == nullptr);
}

// The demo's warmest month has a daily high of 27 °C.
TEST_CASE("the air of high summer comes from the warmest month, and 10 K more within a space") {
    Installation installation = drum();
    CHECK(fill_store(starter(), installation)->hottest_air_c == doctest::Approx(37.0));
    installation.store->stands = heatmatch::StorePlace::outside;
    CHECK(fill_store(starter(), installation)->hottest_air_c == doctest::Approx(27.0));
    installation.store->air_c = 35.0;
    CHECK(fill_store(starter(), installation)->hottest_air_c == doctest::Approx(35.0));
    installation.weather.reset();
    CHECK(fill_store(starter(), installation)->hottest_air_c == doctest::Approx(40.0));
}

TEST_CASE("an unknown fill is refused by name") {
    Installation installation = drum();
    installation.store->medium = "dry-snad";
    CHECK_THROWS_AS((void)fill_store(starter(), installation), heatmatch::NotFound);
}
