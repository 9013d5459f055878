#include "table_texts.hpp"

#include <doctest/doctest.h>

#include "heatmatch/answer/sheet_table.hpp"

using namespace heatmatch;

namespace {

MeterSheet of_one_row() {
    MeterSheet sheet{.title = sentence_of(Name{"bench, feed of 10 m"})};
    sheet.rows = {{.irradiance_w_m2 = 800.0,
                   .cell_temperature_c = 35.0,
                   .open_v = {.typical = 70.04},
                   .short_a = {.typical = 6.004},
                   .array_v = {.typical = 60.0},
                   .bank_v = {.low = 55.0, .typical = 57.5, .high = 60.0},
                   .bank_a = {.low = 2.0, .typical = 2.1, .high = 2.25},
                   .bank_w = {.low = 110.0, .typical = 120.0, .high = 134.6}}};
    return sheet;
}

}  // namespace

// Definition: F = 1.8 C + 32.
TEST_CASE("expected readings have their units in the heads, in either unit set") {
    const Table table = sheet_table(of_one_row());
    Sentences heads;
    for (const TableColumn& column : table.columns) heads.push_back(column.head);
    CHECK(line(heads) == "sun|panels|cells|Voc|Isc|array V|bank V|bank A|bank W");
    REQUIRE(table.rows.size() == 1);
    CHECK(line(table.rows[0]) == "800|warm|35|70.0|6.00|60.0|55.0-60.0|2.00-2.25|110-135");
    CHECK(line(table.rows[0], UnitSystem::us) ==
          "800|warm|95|70.0|6.00|60.0|55.0-60.0|2.00-2.25|110-135");
    REQUIRE(table.legend.size() == 1);
    CHECK(table.legend[0].text().starts_with("sun in W/m2, cells in °C, voltage,"));
    CHECK(table.legend[0].text(UnitSystem::us).starts_with("sun in W/m2, cells in °F, voltage,"));
}

TEST_CASE("the circuit's name is unchanged in each title") {
    const MeterSheet sheet = of_one_row();
    CHECK(sheet_table(sheet).title == sheet.title);
    CHECK(sheet_title(sheet).text(UnitSystem::us) == "meter sheet: bench, feed of 10 m");
    CHECK(sheet_caption(sheet).text(UnitSystem::us).starts_with("bench, feed of 10 m: sun in "));
    CHECK(sheet_plain_title().text() == "what meters should read");
}

// Definition: each irradiance is listed for warm panels, then for panels just uncovered.
TEST_CASE("warm and just uncovered panels are labeled in each row") {
    MeterSheet sheet = of_one_row();
    sheet.rows.push_back(sheet.rows.front());
    const Table table = sheet_table(sheet);
    REQUIRE(table.rows.size() == 2);
    CHECK(table.rows[0][1].text() == "warm");
    CHECK(table.rows[1][1].text() == "cool");
}
