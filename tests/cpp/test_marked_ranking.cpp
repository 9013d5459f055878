#include "demo.hpp"
#include "table_texts.hpp"

#include <cctype>

#include "heatmatch/answer/first_screen.hpp"
#include "heatmatch/answer/marked_ranking.hpp"
#include "heatmatch/match/rank/alternative.hpp"

using heatmatch::Installation;
using heatmatch::marked_table;
using heatmatch::Ranking;

namespace {

std::string place_cell(const heatmatch::Table& table, std::size_t row) {
    return table.rows.at(row).front().text();
}

}  // namespace

TEST_CASE("the row of the recommended circuit is marked, and comes first where it is cut off") {
    const Ranking& ranking = demo_ranking();
    REQUIRE(ranking.recommended);
    const auto place = heatmatch::place_of(ranking, *ranking.recommended);
    REQUIRE(place);
    REQUIRE(*place > 1);  // otherwise the second half tests nothing
    const std::string mark = '>' + std::to_string(*place);
    const heatmatch::Table all = marked_table(ranking, *place);
    CHECK(all.rows.size() == *place);
    CHECK(place_cell(all, *place - 1) == mark);
    CHECK(place_cell(all, 0).starts_with("1"));
    const heatmatch::Table cut = marked_table(ranking, *place - 1);
    CHECK(cut.rows.size() == *place);
    CHECK(place_cell(cut, 0) == mark);
    CHECK(place_cell(cut, 1).starts_with("1"));
}

TEST_CASE("without a recommendation no row is marked, and rows not assessed say so") {
    Installation yard = demo();
    yard.store.reset();
    const Ranking ranking = heatmatch::rank(starter(), yard, {.top = 3});
    REQUIRE_FALSE(ranking.recommended);
    const heatmatch::Table table = marked_table(ranking, 3);
    REQUIRE(table.rows.size() == 3);
    for (std::size_t i = 0; i < 3; ++i) {
        REQUIRE_FALSE(heatmatch::undecided_margins(ranking.candidates[i]).empty());
        CHECK(place_cell(table, i) == std::to_string(i + 1) + '?');
    }
    CHECK_FALSE(contains(text_of(heatmatch::short_legend(ranking)), "BUILD"));
    CHECK(contains(text_of(heatmatch::short_legend(ranking)), "not assessed"));
}

TEST_CASE("a selected row keeps the refusal, and only the recommended circuit is to build") {
    const Ranking& ranking = demo_ranking();
    const auto first = heatmatch::first_screen(ranking, ranking.candidates.front());
    CHECK(first.blocks.front().label.text() == "circuit");
    CHECK(contains(first.status.said, "Circuit 1 of the ranking, not recommended."));
    CHECK(contains(first.status.said, ranking.recommended->circuit.title()));
    const auto build = heatmatch::first_screen(ranking, *ranking.recommended);
    CHECK(build.blocks.front().label.text() == "build");
    CHECK_FALSE(contains(build.status.said, "not recommended"));

    Installation yard = demo();
    yard.store.reset();
    const Ranking none = heatmatch::rank(starter(), yard, {.top = 3});
    const auto refused = heatmatch::first_screen(none, none.candidates.front());
    CHECK(contains(refused.status.said, "not recommended"));
    CHECK(contains(refused.status.said, none.lacking.text()));
}

TEST_CASE("parts that no circuit has are named with the reason") {
    Installation yard = demo();
    yard.elements = {{.element = "storage-rod-1000-240", .count = 2},
                     {.element = "immersion-4500-240", .count = 2}};
    Ranking ranking = heatmatch::rank(starter(), yard);
    const auto holds = [](const heatmatch::Candidate& each) {
        return each.circuit.bank.element.id == "immersion-4500-240";
    };
    std::erase_if(ranking.candidates, holds);
    const std::string said = text_of(heatmatch::unused_lines(ranking, yard));
    CAPTURE(said);
    CHECK(contains(said, "Not used: 2 × immersion-4500-240: "));
    CHECK_FALSE(contains(said, "storage-rod-1000-240"));
    ranking.candidates.clear();
    ranking.recommended.reset();
    CHECK(contains(text_of(heatmatch::unused_lines(ranking, yard)), yard.panels[0].group));
}
