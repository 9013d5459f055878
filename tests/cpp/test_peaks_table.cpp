#include "table_texts.hpp"

#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/answer/peaks_table.hpp"

using namespace heatmatch;

TEST_CASE("a part's highest temperature is beside its limit, with day and clock") {
    const DayRun run{.days = 2.0, .first_hour = 0.5};
    PartPeak sheath{.hours = 23.5};
    sheath.margin.name = "sheath temperature";
    sheath.margin.value = 300.0;
    sheath.margin.limit = 540.0;
    sheath.margin.headroom = 0.45;
    sheath.margin.severity = Severity::none;
    PartPeak lid{.hours = 36.75};
    lid.margin.name = "lid";
    lid.margin.value = 40.4;
    const std::vector<PartPeak> peaks{sheath, lid};
    const Table table = peaks_table(run, peaks);
    REQUIRE(table.columns.size() == 6);
    CHECK(table.columns[1].head.text() == "most, °C");
    CHECK(table.columns[1].head.text(UnitSystem::us) == "most, °F");
    REQUIRE(table.rows.size() == 2);
    // 23.5 h after half past midnight is midnight: the second day begins. F = 1.8 C + 32.
    CHECK(line(table.rows[0]) == "sheath|300|540|0.45|no finding|day 2, 0:00");
    CHECK(line(table.rows[0], UnitSystem::us) == "sheath|572|1004|0.45|no finding|day 2, 0:00");
    CHECK(line(table.rows[1]) == "lid|40|?|not assessed|day 2, 13:15");
    CHECK(table.rows[1][3].empty());
}

// Half a minute before midnight shows as midnight, of the next day.
TEST_CASE("day and clock round alike") {
    const DayRun run{};
    const std::vector<PartPeak> peaks{PartPeak{.hours = 24.0 - 0.4 / 60.0}};
    CHECK(peaks_table(run, peaks).rows[0].back().text() == "day 2, 0:00");
}

TEST_CASE("peaks of a week, of a stagnation and after a run have titles of their own") {
    CHECK(peaks_table({}, {}).title.text() == "highest temperatures");
    CHECK(peaks_in_days_title().text() == "highest temperature of each part on those days");
    CHECK(stagnation_title().text() == "stagnation");
    CHECK(welded_shut_title().text() == "If the circuit were welded closed:");
}
