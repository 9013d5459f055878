#include "demo.hpp"

#include "heatmatch/answer/ranking_comparison.hpp"

using namespace heatmatch;

namespace {

PairingMove move_of(std::string element, RankedPairing before, RankedPairing after) {
    return {.group = "porch of 4 m",
            .panels = "2S2P",
            .element = std::move(element),
            .bank = "1S1P",
            .before = std::move(before),
            .after = std::move(after)};
}

RankedPairing ranked_at(int place, double heat = 100.0) {
    return {.place = place,
            .heat = heat,
            .headroom = 0.25,
            .price = 30.0,
            .severity = heatmatch::Severity::warning};
}

RankedPairing rejected(std::string worst) {
    return {.heat = 120.0,
            .headroom = -0.1,
            .severity = heatmatch::Severity::danger,
            .worst = std::move(worst)};
}

std::string row(const Table& table, std::size_t place = 0) {
    return text_of(table.rows.at(place), UnitSystem::si, "|");
}

std::string title(std::vector<PairingMove> moves) {
    return comparison_table({.by_season = true, .moves = std::move(moves)}).title.text();
}

}  // namespace

TEST_CASE("a pairing has its places, heat, change, headroom and price in a row") {
    const Table table =
        comparison_table({.before = "old",
                          .after = "new",
                          .moves = {move_of("rod", ranked_at(2), ranked_at(1, 112.4))}});
    CHECK(row(table) == "1|2|porch of 4 m 2S2P|rod 1S1P|112|100|+12|0.25|30");
    CHECK(table.columns[4].head.text() == "W");
    CHECK(contains(text_of(table.legend),
                   "now: place in new; was: in old; W: averaged over the "
                   "conditions into the elements."));
    CHECK(row(comparison_table(
              {.moves = {move_of("rod", ranked_at(1, 100.1), ranked_at(1, 100.0))}})) ==
          "1|1|porch of 4 m 2S2P|rod 1S1P|100|100|+0|0.25|30");
    CHECK(row(comparison_table({.moves = {move_of("rod", ranked_at(3), {})}})) ==
          "-|3|porch of 4 m 2S2P|rod 1S1P|-|100|-|0.25|-");
    CHECK(comparison_table({.moves = {move_of("rod", ranked_at(13), ranked_at(14))}}).rows.empty());
}

TEST_CASE("a danger is shown with its margin, or by its word alone") {
    const RankingComparison comparison{.moves = {move_of("rod", ranked_at(1), rejected("coil")),
                                                 move_of("coil", rejected("touch"), ranked_at(1)),
                                                 move_of("fin", ranked_at(2), rejected("coil"))}};
    CHECK(comparison_table(comparison).rows[0][0].text() == "danger: coil");
    CHECK(comparison_table(comparison, false).rows[0][0].text() == "danger");
    CHECK(text_of(comparison_dangers(comparison)) ==
          "Now a danger: coil: porch of 4 m 2S2P into rod 1S1P, porch of 4 m 2S2P into fin 1S1P. "
          "Before a danger: touch: porch of 4 m 2S2P into coil 1S1P.");
}

TEST_CASE("the title reports the change of the first place") {
    const std::string rod = "porch of 4 m 2S2P into rod 1S1P";
    const std::string fin = "porch of 4 m 2S2P into fin 1S1P";
    CHECK(title({move_of("rod", ranked_at(1), ranked_at(1, 90.0))}) ==
          rod + " stays first, -10 kWh.");
    CHECK(title({}) == "Before, every pairing had a danger.");
    CHECK(title({move_of("rod", {}, ranked_at(1))}) ==
          "Before, every pairing had a danger; " + rod + " is first now.");
    CHECK(title({move_of("rod", ranked_at(1), {})}) ==
          "Now every pairing has a danger; " + rod + ", which was first, is not kept.");
    CHECK(title({move_of("rod", ranked_at(1), rejected("coil"))}) ==
          "Now every pairing has a danger; " + rod + ", which was first, is a danger: coil.");
    CHECK(title({move_of("rod", ranked_at(4), ranked_at(1)),
                 move_of("fin", ranked_at(1), ranked_at(2))}) ==
          rod + " is now first (before: at place 4); " + fin +
              ", which was first, is now at place 2.");
    CHECK(title({move_of("rod", rejected("touch"), ranked_at(1)),
                 move_of("fin", ranked_at(1), rejected("coil"))}) ==
          rod + " is now first (before: a danger: touch); " + fin +
              ", which was first, is now a danger: coil.");
    CHECK(title({move_of("rod", {}, ranked_at(1)), move_of("fin", ranked_at(1), {})}) ==
          rod + " is now first (before: not kept); " + fin +
              ", which was first, is no longer kept.");
}

TEST_CASE("reasons are shown where they differ, and remarks last") {
    RankingComparison comparison{.by_season = true,
                                 .reasons_before = {{"budget", 2}},
                                 .reasons_after = {{"budget", 2}},
                                 .currency = "USD",
                                 .remarks = {unlike_rankings_remark()}};
    CHECK(comparison_table(comparison).legend.size() == 2);
    comparison.reasons_before.clear();
    const Sentences legend = comparison_table(comparison).legend;
    REQUIRE(legend.size() == 3);
    CHECK(contains(legend[0], "kWh: heat of the season into the elements"));
    CHECK(contains(legend[0], "present purchase price in USD."));
    CHECK(legend[1].text() == "Pairings rejected now: above the budget 2. They were: none.");
    CHECK(contains(legend[2], "Only one of the two rankings has a season"));
}
