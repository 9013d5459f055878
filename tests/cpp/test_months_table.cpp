#include "table_texts.hpp"

#include <doctest/doctest.h>

#include "heatmatch/answer/months_table.hpp"

using namespace heatmatch;

namespace {

DarkHours december() {
    return {.month = 12,
            .days = 31.0,
            .available_kwh_day = 2.5,
            .delivered_kwh_day = 1.25,
            .to_space_kwh_day = 12.5,
            .dark_hours = 480.0,
            .above_target_hours = 100.0,
            .above_target_unheated_hours = 90.0,
            .lowest_c = -5.0,
            .lift_k = 1.5,
            .required_lift_k = 4.0};
}

}  // namespace

// Definitions: a difference of 1 K is one of 1.8 °F; F = 1.8 C + 32.
TEST_CASE("a month has energies of a day and its dark hours, in either unit set") {
    DayAnswer answer;
    answer.months = {december()};
    const Table table = months_table(answer);
    Sentences heads;
    for (const TableColumn& column : table.columns) heads.push_back(column.head);
    CHECK(line(heads) == "month|days|most|in|space|dark h|warm h|without|+ K|need K|low °C");
    CHECK(line(heads, UnitSystem::us) ==
          "month|days|most|in|space|dark h|warm h|without|+ °F|need °F|low °F");
    REQUIRE(table.rows.size() == 1);
    CHECK(line(table.rows[0]) == "Dec|31|2.50|1.25|12.5|480|100|90|1.5|4.0|-5");
    CHECK(line(table.rows[0], UnitSystem::us) == "Dec|31|2.50|1.25|12.5|480|100|90|2.7|7.2|23");
    REQUIRE(table.legend.size() == 1);
    CHECK(
        table.legend[0].text().starts_with("most, in, space: kWh a day available from the panels"));
}

TEST_CASE("several months are followed by all days") {
    DayAnswer answer;
    answer.months = {december(), december()};
    answer.all = december();
    answer.all.month = 0;
    const Table table = months_table(answer);
    REQUIRE(table.rows.size() == 3);
    CHECK(table.rows[2][0].text() == "all");
    CHECK(table.title.text() == "months");
    CHECK(nights_title().text() == "the nights");
}
