#include "demo.hpp"

#include <cmath>

#include "heatmatch/answer/heat_table.hpp"
#include "heatmatch/match/candidate/assess.hpp"
#include "heatmatch/match/margins/sheath_margins.hpp"

using namespace heatmatch;

TEST_CASE("heat in the store has a row for each place, assessed against its limit") {
    const Candidate candidate = assess(starter(), demo());
    const auto point = heat_of(candidate.circuit, candidate.bright);
    REQUIRE(point);
    const Table table = heat_table(candidate);
    REQUIRE(table.columns.size() == 6);
    const auto row = [&](std::string_view head) {
        for (const Sentences& cells : table.rows) {
            if (cells[0].text() == head) return cells;
        }
        FAIL("no such row");
        return Sentences{};
    };
    const auto whole = [](double celsius) { return format_number(std::round(celsius)); };
    const Sentences sheath = row("sheath");
    CHECK(sheath[1].text() == whole(point->sheath_band.low_c));
    CHECK(sheath[4].text() == whole(point->sheath_c));
    CHECK(sheath[5].text() == whole(candidate.circuit.bank.sheath->verdict_limit_c));
    CHECK(row("coil")[5].text() == "?");  // of its alloy nobody stated one
    CHECK(row("terminal")[4].text() ==
          whole(*margin_of(candidate.margins(), "terminal temperature").value));
    CHECK(row("bed, mean")[2].text() == whole(point->bed_mean_c));
    CHECK(row("bed, mean")[4].empty());
    CHECK(row("wall, hottest spot")[4].text() == whole(point->wall_c));
}

// Source: °F = 9/5 °C + 32; an inch is 2.54 cm.
TEST_CASE("the title states the conditions of the temperatures, in either unit set") {
    const Candidate candidate = assess(starter(), demo());
    const auto point = heat_of(candidate.circuit, candidate.bright);
    REQUIRE(point);
    const Table table = heat_table(candidate);
    const std::string us = table.title.text(UnitSystem::us);
    CHECK(contains(table.title, "temperatures in the store, °C: "));
    const std::string day =
        ", " + format_number(candidate.circuit.heat->store->charge_hours) + " h a day";
    CHECK(contains(table.title, " W/cm" + day));
    CHECK(contains(us, "temperatures in the store, °F: "));
    CHECK(contains(us, " W/in" + day));
    CHECK(std::stod(table.rows[0][4].text(UnitSystem::us)) ==
          std::round(1.8 * point->sheath_c + 32.0));
}

TEST_CASE("without a store there is no row") {
    Installation bare = demo();
    bare.store.reset();
    const Table table = heat_table(assess(starter(), bare));
    CHECK(table.rows.empty());
    CHECK(table.title.text() == "temperatures in the store: not computed");
}
