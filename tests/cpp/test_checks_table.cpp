#include "table_texts.hpp"

#include <doctest/doctest.h>

#include "heatmatch/answer/checks_table.hpp"

using namespace heatmatch;

namespace {

MeterSheet of_two_checks() {
    MeterSheet sheet;
    sheet.checks = {{.letter = "A",
                     .reading = words("ohms"),
                     .how = words("Cold."),
                     .expect = sentence_of(Amount{.value = 100.0, .unit = unit::celsius}),
                     .if_low = words("a short."),
                     .if_high = words("a break.")},
                    {.letter = "B", .reading = words("volts"), .how = words("Hot.")}};
    sheet.missing = {words("the alloy")};
    return sheet;
}

}  // namespace

// Definition: F = 1.8 C + 32.
TEST_CASE("a check has one row, and lines where it has text") {
    const MeterSheet sheet = of_two_checks();
    const Table table = checks_table(sheet);
    CHECK(table.title.text() == "what to measure and to look at");
    CHECK(table.columns.size() == 6);
    REQUIRE(table.rows.size() == 2);
    CHECK(text_of(table.rows[0], UnitSystem::us, "|") == "A|ohms|Cold.|212 °F|a short.|a break.");
    CHECK(table.rows[1].size() == 6);
    const Sentences lines = check_lines(sheet.checks[0]);
    REQUIRE(lines.size() == 4);
    CHECK(lines[0].text() == "A  ohms: 100 °C");
    CHECK(lines[1].text() == "Cold.");
    CHECK(lines[2].text() == "less: a short.");
    CHECK(lines[3].text() == "more: a break.");
    CHECK(check_lines(sheet.checks[1]).size() == 2);
    REQUIRE(not_known_sentences(sheet).size() == 1);
    CHECK(not_known_sentences(sheet)[0].text() == "not known: the alloy");
}
