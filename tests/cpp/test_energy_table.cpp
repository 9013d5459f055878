#include "table_texts.hpp"

#include <doctest/doctest.h>

#include "heatmatch/answer/energy_table.hpp"

using namespace heatmatch;

namespace {

DayRun four_days() {
    return {.title = "bench 1S1P",
            .days = 4.0,
            .energy = {.available_kwh = 10.0,
                       .delivered_kwh = 8.0,
                       .wire_kwh = 0.5,
                       .stored_kwh = -0.001,
                       .to_space_kwh = 6.0,
                       .outside_kwh = 1.5}};
}

}  // namespace

TEST_CASE("heat out of the store is one row unless the space is described") {
    DayRun run = four_days();
    const Table table = energy_table(run);
    CHECK(table.title.text() == "bench 1S1P: 4 days");
    REQUIRE(table.columns.size() == 3);
    CHECK(table.columns[0].head.text(UnitSystem::us) == "energy, kWh");
    REQUIRE(table.rows.size() == 5);
    CHECK(line(table.rows[0]) == "available from the panels|10.00|2.50");
    CHECK(line(table.rows[3]) == "given off by the store|7.50|1.88");
    // What rounds to nothing has no sign.
    CHECK(line(table.rows[4]) == "increase of stored heat|0.00|0.00");
    run.heats_space = true;
    run.energy.steam_kwh = 0.4;
    const Table apart = energy_table(run);
    REQUIRE(apart.rows.size() == 7);
    CHECK(line(apart.rows[3]) == "from the store to the space|6.00|1.50");
    CHECK(line(apart.rows[4]) == "lost outside the space|1.50|0.38");
    CHECK(line(apart.rows[6]) == "of that, lost as steam|0.40|0.10");
    CHECK(dark_days_title(7).text() == "7 days of the darkest month");
}
