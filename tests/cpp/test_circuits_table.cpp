#include "two_circuits.hpp"

#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/answer/circuits_table.hpp"

using heatmatch::Candidate;

TEST_CASE("the table of circuits has a row for each, and the heat and the price of all") {
    const std::vector<Candidate> circuits =
        heatmatch::assess_circuits(starter(), two_circuits(), {.memory = nullptr});
    const std::vector<const Candidate*> rows{&circuits[0], &circuits[1]};
    const heatmatch::Table table = heatmatch::circuits_table(rows);
    REQUIRE(table.rows.size() == 3);
    CHECK(table.columns.front().head.text() == "circuit");
    CHECK(table.rows[0].front().text() == "barn");
    CHECK(table.rows[1].front().text() == "porch");
    CHECK(table.rows[2].front().text() == "all");
    const double all =
        circuits[0].season->mean_kwh_per_day() + circuits[1].season->mean_kwh_per_day();
    CHECK(std::stod(table.rows[2][4].text()) == doctest::Approx(all).epsilon(0.01));
    for (const auto& row : table.rows) CHECK(row.size() == table.columns.size());
    CHECK(heatmatch::circuits_table({}).rows.empty());
}

TEST_CASE("an unknown price makes that of all unknown") {
    std::vector<Candidate> circuits =
        heatmatch::assess_circuits(starter(), two_circuits(), {.memory = nullptr});
    circuits[1].price_to_buy.reset();
    const std::vector<const Candidate*> rows{&circuits[0], &circuits[1]};
    const heatmatch::Table table = heatmatch::circuits_table(rows);
    std::size_t prices = 0;
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        if (table.columns[i].head.text() != "USD") continue;
        ++prices;
        CHECK(table.rows[0][i].text() != "?");
        CHECK(table.rows[2][i].text() == "?");
    }
    CHECK(prices == 1);
}
