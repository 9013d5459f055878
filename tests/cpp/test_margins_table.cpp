#include "demo.hpp"
#include "table_texts.hpp"

#include "heatmatch/answer/margins_table.hpp"
#include "heatmatch/match/candidate/assess.hpp"

using namespace heatmatch;

namespace {

constexpr auto taking_templates =
    std::to_array<Template>({{"test.takes", "It takes {value} of {limit}."}});

Margin made(std::string name, double value) {
    Margin margin{.name = std::move(name),
                  .subject = "run \"feed of 10 m\"",
                  .value = value,
                  .limit = 100.0,
                  .unit = unit::celsius,
                  .said = make_sentence<taking_templates, "test.takes", "value", "limit">(),
                  .source = "iec-60364-4-41"};
    grade(margin);
    return margin;
}

Candidate judged() {
    Candidate candidate;
    candidate.made =
        LazyMargins({made("cool", 20.0), made("close", 99.999), made("melts", 130.0),
                     not_assessed("bare", "rod", verbatim("Nobody said."), {"sheath", "legs"}),
                     not_assessed("lone", "rod", verbatim("Nobody said."), {}),
                     not_assessed("other", "rod", verbatim("Other."), {})});
    return candidate;
}

std::vector<std::string> column_at(const Table& table, std::size_t place,
                                   UnitSystem system = UnitSystem::si) {
    std::vector<std::string> cells;
    for (const Sentences& row : table.rows) cells.push_back(row.at(place).text(system));
    return cells;
}

}  // namespace

TEST_CASE("margins are sorted by severity, those not assessed before those with no finding") {
    const Table table = margins_table(judged());
    CHECK(table.title.text() == "margins, the most severe first");
    CHECK(column_at(table, 0) ==
          Texts{"danger", "caution", "not assessed", "not assessed", "not assessed", "no finding"});
    CHECK(column_at(table, 1) == Texts{"melts", "close", "bare", "lone", "other", "cool"});
    CHECK(column_at(table, 3) == Texts{"-0.30", "0.00", "", "", "", "0.80"});
    CHECK(column_at(table, 5)[0] == "iec-60364-4-41");
    CHECK(margins_table(judged(), {.source = false}).columns.size() == 5);
}

// Source: °F = 9/5 °C + 32. The name keeps its metres.
TEST_CASE("a margin shows its numbers in either unit set, with enough digits to distinguish them") {
    const Table table = margins_table(judged());
    CHECK(column_at(table, 4)[0] == "It takes 130 °C of 100 °C.");
    CHECK(column_at(table, 4, UnitSystem::us)[0] == "It takes 266 °F of 212 °F.");
    CHECK(column_at(table, 4)[1] == "It takes 99.999 °C of 100 °C.");
    CHECK(column_at(table, 2, UnitSystem::us)[0] == "run \"feed of 10 m\"");
}

TEST_CASE("missing fields are shown where requested") {
    const Table table = margins_table(judged(), {.missing = true});
    CHECK(column_at(table, 4)[2] == "Nobody said. Not known: sheath, legs.");
    CHECK(column_at(table, 4)[3] == "Nobody said.");
    CHECK(table.columns[4].head.text() == "what it says");
    CHECK(margins_table(judged()).columns[4].head.text().empty());
}

TEST_CASE("lines count margins with no finding and combine those of one reason") {
    Texts lines;
    for (const Sentence& line : margin_lines(judged())) lines.push_back(line.text());
    CHECK(lines == Texts{"danger: melts, run \"feed of 10 m\": It takes 130 °C of 100 °C.",
                         "caution: close, run \"feed of 10 m\": It takes 99.999 °C of 100 °C.",
                         "not assessed: bare, lone, rod: Nobody said.",
                         "not assessed: other, rod: Other.",
                         "1 other checks: no finding, which promises nothing"});
    CHECK(margin_lines(judged(), true).size() == 6);
    CHECK(margin_reason(made("melts", 130.0)).text(UnitSystem::us) ==
          "run \"feed of 10 m\": It takes 266 °F of 212 °F.");
}

TEST_CASE("every margin of the demo has the same text in its cell and alone") {
    const Candidate candidate = assess(starter(), demo());
    const auto margins = by_severity(candidate);
    const Texts cells = column_at(margins_table(candidate), 4);
    REQUIRE(cells.size() == margins.size());
    for (std::size_t i = 0; i < cells.size(); ++i) CHECK(cells[i] == margins[i]->sentence());
}
