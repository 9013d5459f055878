#include "demo.hpp"

#include <doctest/doctest.h>

#include "heatmatch/answer/bill_table.hpp"

using namespace heatmatch;

namespace {

/// Two switches to buy at 10 to 20 USD each, and 4 m of owned wire.
Bill two_lines() {
    return {.lines = {{.kind = PartKind::control,
                       .part = "switch",
                       .quantity = 2.0,
                       .to_buy = 2.0,
                       .price = {.low = 10.0, .high = 20.0, .currency = "USD"},
                       .why = verbatim("A disconnect.")},
                      {.kind = PartKind::wire,
                       .part = "wire",
                       .quantity = 4.0,
                       .owned = 4.0,
                       .why = verbatim("The home run.")}},
            .currency = "USD"};
}

}  // namespace

// Source: 2 x 10, 2 x 15 and 2 x 20.
TEST_CASE("a bill is summed beside its budget, what is to buy comes first") {
    Bill bill = two_lines();
    CHECK(bill_sentence(bill).text() == "Bill: 30 USD (20 to 40).");
    bill.budget = 30.0;
    CHECK(bill_sentence(bill).text() ==
          "Bill: 30 USD (20 to 40), within the budget of 30 USD at middle prices; the range "
          "reaches beyond it.");
    bill.budget = 29.0;
    CHECK(contains(bill_sentence(bill), "above the budget of 29 USD"));
    const Sentences lines = bill_lines(bill);
    REQUIRE(lines.size() == 2);
    CHECK(lines[0].text() == "switch: 2 to buy, 20 to 40 USD. A disconnect.");
    CHECK(lines[1].text() == "wire: owned. The home run.");
    const Table table = bill_table(bill);
    CHECK(table.rows.size() == 2);
    CHECK(table.rows[0].size() == table.columns.size());
    bill.lines.erase(bill.lines.begin());
    CHECK(contains(bill_sentence(bill), "nothing to buy"));
}

TEST_CASE("a bill that is not known says what is missing, and is not within the budget") {
    Bill bill = two_lines();
    bill.budget = 1e6;
    bill.lines.push_back({.kind = PartKind::control,
                          .quantity = 1.0,
                          .to_buy = 1.0,
                          .state = BillState::no_part,
                          .why = verbatim("A limit.")});
    bill.lines[0].price = {};
    bill.lines[0].state = BillState::price_not_known;
    const std::string said = bill_sentence(bill).text();
    CHECK(contains(said, "Bill not known: no price for switch, no part"));
    CHECK(contains(said, "does not count as within the budget"));
    CHECK(contains(bill_lines(bill)[1], "no part: A limit."));
    CHECK(bill_table(bill).rows[2][0].text() == "no part");
}

TEST_CASE("code requirements without a device are named as not on the bill") {
    const Candidate& best = demo_ranking().candidates.front();
    const Sentences remarks = bill_remarks(best);
    REQUIRE_FALSE(remarks.empty());
    CHECK(contains(remarks.back(), "earth-fault protection"));
}
