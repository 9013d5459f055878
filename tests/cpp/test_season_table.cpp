#include "demo.hpp"
#include "table_texts.hpp"

#include "heatmatch/answer/season_table.hpp"

using namespace heatmatch;

namespace {

Candidate of_two_months() {
    Candidate candidate{
        .circuit = bench_circuit("silicon-60-cell-245", {2, 1}, "storage-rod-1000-240", {1, 1}),
        .currency = "USD"};
    Season season{.months = {11, 12},
                  .days = 61.0,
                  .kwh_low = 50.4,
                  .kwh = 61.0,
                  .kwh_high = 71.6,
                  .mpp_kwh = 122.0,
                  .best_ohm = 60.0,
                  .near_short_circuit_share = 0.333};
    season.kwh_per_day = {0.5, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1.25, 12.5};
    season.mpp_kwh_per_day = {1.0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 5.0, 125.0};
    candidate.season = season;
    return candidate;
}

}  // namespace

TEST_CASE("a season has a column for each month that the weather has") {
    const Table table = season_table(*of_two_months().season);
    Sentences heads;
    for (const TableColumn& column : table.columns) heads.push_back(column.head);
    CHECK(line(heads) == "month|Jan|Nov*|Dec*");
    REQUIRE(table.rows.size() == 3);
    CHECK(line(table.rows[0]) == "kWh/day|0.50|1.25|12.5");
    CHECK(line(table.rows[1]) == "at most|1.00|5.00|125");
    CHECK(line(table.rows[2]) == "%|50|25|10");
    CHECK(darkest_month(*of_two_months().season) == 11);
    CHECK_FALSE(darkest_month(Season{}));
}

// Source: the rod has (240 V)^2 / 1000 W = 57.6 ohm cold; its alloy adds less than 10 % hot.
TEST_CASE("a season has its heat, the reason for its best resistance, and the cost of a kWh") {
    Candidate candidate = of_two_months();
    Sentences said = season_sentences(candidate);
    REQUIRE(said.size() == 3);
    CHECK(said[0].text() ==
          "Heat over 61 days of the season (*): 61 kWh (50 to 72 by tolerance, age or reading). "
          "Utilization: 50 %.");
    CHECK(contains(said[1], candidate.season->best_ohm_sentence().text()));
    CHECK(contains(said[1], " ohm."));
    CHECK(contains(said[2], "In about 33 % of the sunlit hours"));
    candidate.season->cloud_band = true;
    candidate.season->best_ohm = 30.0;
    candidate.season->price_per_kwh = 0.256;
    candidate.season->remarks = {verbatim("A gap of two days.")};
    said = season_sentences(candidate);
    REQUIRE(said.size() == 5);
    CHECK(contains(said[0], "or reading, cloud within the step). "));
    CHECK(contains(said[1], " ohm: too high."));
    CHECK(said[3].text() == "Purchase cost: 0.26 USD per kWh of one season's heat.");
    CHECK(said[4].text() == "A gap of two days.");
    candidate.season->best_ohm = 90.0;
    candidate.currency.clear();
    said = season_sentences(candidate);
    CHECK(contains(said[1], " ohm: too low."));
    CHECK(contains(said[3], "Purchase cost: 0.26 per kWh"));
    CHECK(season_sentences({}).empty());
}
