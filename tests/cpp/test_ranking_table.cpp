#include "demo.hpp"
#include "table_texts.hpp"

#include <cmath>

#include "heatmatch/answer/ranking_table.hpp"
#include "heatmatch/match/candidate/assess.hpp"
#include "heatmatch/match/margins/sheath_margins.hpp"

using namespace heatmatch;

namespace {

/// Two panels in series into one rod, of a season of ten days.
Candidate of_ten_days() {
    Candidate candidate{
        .circuit = bench_circuit("silicon-60-cell-245", {2, 1}, "storage-rod-1000-240", {1, 1})};
    candidate.season =
        Season{.days = 10.0, .kwh_low = 9.0, .kwh = 10.44, .kwh_high = 123.0, .mpp_kwh = 20.0};
    candidate.made = LazyMargins(std::vector<Margin>{});
    candidate.price_to_buy = 31.4;
    candidate.currency = "USD";
    return candidate;
}

std::vector<std::string> texts(const Sentences& cells, UnitSystem system = UnitSystem::si) {
    std::vector<std::string> all;
    for (const Sentence& cell : cells) all.push_back(cell.text(system));
    return all;
}

std::vector<std::string> heads(const Table& table, UnitSystem system = UnitSystem::si) {
    std::vector<std::string> all;
    for (const TableColumn& column : table.columns) all.push_back(column.head.text(system));
    return all;
}

}  // namespace

// Source: 10.44 kWh in ten days are 1.04 a day, of 20 kWh they are 52 %. By the label of the panel
// two in series are 2 x 37.53 V (1 + 45 x 0.00347) = 86.8 V at -20 °C.
TEST_CASE("a row has panels, elements, heat of a day with its band, share, headroom and price") {
    const Candidate candidate = of_ten_days();
    const Candidate* const one = &candidate;
    const Table table = ranking_table({&one, 1});
    CHECK(heads(table) == Texts{"#", "panels", "cold V", "elements", "kWh/day", "band", "max%",
                                "head", "buy, USD"});
    REQUIRE(table.rows.size() == 1);
    CHECK(texts(table.rows[0]) == Texts{"1", "bench 2S1P", "87", "storage-rod-1000-240 1S1P",
                                        "1.04", "0.90-12.3", "52", "1.00", "31"});
    CHECK(table.columns[2].number);
    CHECK_FALSE(table.columns[3].number);
    CHECK(table.columns[4].number);
    CHECK(price_sentence(candidate).text() == "31 USD");
    CHECK(pairing_sentence(candidate.circuit).text() == candidate.circuit.title());
}

TEST_CASE("without weather heat is in watts, and an unknown price is not shown") {
    Candidate candidate = of_ten_days();
    candidate.season.reset();
    candidate.price_to_buy.reset();
    candidate.delivered = {{.power_low_w = 9000.0,
                            .power_w = 9999.0,
                            .power_high_w = 10400.0,
                            .maximum_power_w = 12000.0}};
    const Candidate* const one = &candidate;
    const Table table = ranking_table({&one, 1}, {.letters = true});
    CHECK(heads(table)[4] == "mean");
    CHECK(texts(table.rows[0]) == Texts{"a", "bench 2S1P", "87", "storage-rod-1000-240 1S1P",
                                        "9999", "9000-10k", "83", "1.00", "?"});
    CHECK(price_sentence(candidate).text() == "? USD");
}

// Source: °F = 9/5 °C + 32; an inch is 2.54 cm.
TEST_CASE("with a store the sheath is beside its limit, in the unit set of the reader") {
    const Candidate candidate = assess(starter(), demo());
    const Candidate* const one = &candidate;
    const Table wide = ranking_table({&one, 1});
    const Table narrow = ranking_table({&one, 1}, {.share = false});
    CHECK(wide.columns.size() == 11);
    CHECK(heads(narrow) ==
          Texts{"#", "panels", "cold V", "elements", "kWh/day", "band", "head", "USD", "sheath"});
    CHECK(heads(wide).back() == "W/cm");
    CHECK(heads(wide, UnitSystem::us).back() == "W/in");
    REQUIRE(narrow.rows[0].size() == narrow.columns.size());
    const auto point = heat_of(candidate.circuit, candidate.bright);
    REQUIRE(point);
    const double limit_c = candidate.circuit.bank.sheath->verdict_limit_c;
    CHECK(numbers_in(narrow.rows[0][8].text()) ==
          std::vector<double>{std::round(point->sheath_c), std::round(limit_c)});
    CHECK(numbers_in(narrow.rows[0][8].text(UnitSystem::us)) ==
          std::vector<double>{std::round(1.8 * point->sheath_c + 32.0),
                              std::round(1.8 * limit_c + 32.0)});
    CHECK(std::stod(wide.rows[0][10].text(UnitSystem::us)) ==
          doctest::Approx(2.54 * point->w_per_cm).epsilon(5e-3));
}

TEST_CASE("the legend explains the columns of the table, and no others") {
    const Ranking ranking = rank(starter(), small(), {.top = 3, .keep_rejected = 3});
    const std::string wide = text_of(ranking_legend(ranking));
    CHECK(contains(wide, "max%: utilization, the share of what the panels could give."));
    CHECK(contains(wide, "W/cm: power per heated length"));
    CHECK(contains(text_of(ranking_legend(ranking), UnitSystem::us),
                   "W/in: power per heated length"));
    CHECK(contains(wide, "(1 unused, 0 at the limit)"));
    CHECK(contains(wide, "2S1P: two in series, one string. Order: heat in steps of 1 %,"));
    CHECK(contains(wide, "cold V: open-circuit voltage at the record low."));
    CHECK_FALSE(contains(text_of(ranking_legend(ranking, false)), "max%"));
    CHECK_FALSE(contains(text_of(ranking_legend(ranking, false)), "W/cm"));
    CHECK(contains(text_of(ranking_legend({})), "max%"));
    CHECK_FALSE(contains(text_of(ranking_legend({})), "sheath"));
}

TEST_CASE("letters continue after z") {
    CHECK(place_letter(1) == "a");
    CHECK(place_letter(26) == "z");
    CHECK(place_letter(27) == "aa");
    CHECK(place_letter(703) == "aaa");
    CHECK(ranking_table({}).rows.empty());
}
