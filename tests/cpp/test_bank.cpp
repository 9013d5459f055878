#include "demo.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/match/circuit/bank.hpp"

using heatmatch::Bank;
using heatmatch::Element;
using heatmatch::Hookup;
using heatmatch::make_bank;

namespace {

/// An element of 15 ohm, measured cold, of an alloy that the starter has.
Element fifteen_ohm() {
    return {.id = "fifteen",
            .label = "fifteen",
            .family = "tubular",
            .measured_resistance_ohm = 15.0,
            .alloy = "copper-nickel-44"};
}

Bank bank_of(Hookup hookup, int owned = 0) {
    return make_bank(starter(), fifteen_ohm(), hookup, owned, 300.0);
}

}  // namespace

// Source: Ohm's law, 15 s/p; copper-nickel keeps its ohms.
TEST_CASE("equal elements in series add, in parallel share") {
    CHECK(bank_of({1, 1}).typical_ohm() == doctest::Approx(15.0));
    CHECK(bank_of({2, 1}).typical_ohm() == doctest::Approx(30.0));
    CHECK(bank_of({1, 2}).typical_ohm() == doctest::Approx(7.5));
    CHECK(bank_of({3, 2}).typical_ohm() == doctest::Approx(22.5));
    CHECK(bank_of({2, 2}).typical_ohm() == doctest::Approx(15.0));
    for (const Hookup hookup : heatmatch::hookups_up_to(12)) {
        const Bank bank = bank_of(hookup);
        CHECK(bank.low_ohm() == doctest::Approx(0.99 * bank.typical_ohm()));
        CHECK(bank.high_ohm() == doctest::Approx(1.01 * bank.typical_ohm()));
    }
}

// Source: Ohm's law: of p equal branches p - 1 are left.
TEST_CASE("with one branch open the others are left") {
    CHECK(bank_of({1, 2}).with_one_branch_open(7.5) == doctest::Approx(15.0));
    CHECK(bank_of({1, 4}).with_one_branch_open(3.75) == doctest::Approx(5.0));
    CHECK(bank_of({2, 3}).with_one_branch_open(10.0) == doctest::Approx(15.0));
    CHECK(std::isinf(bank_of({1, 1}).with_one_branch_open(15.0)));
    CHECK(std::isinf(bank_of({3, 1}).with_one_branch_open(45.0)));
}

TEST_CASE("a bank owns copies of its element and its alloy") {
    const Bank bank = bank_of({1, 2}, 1);
    CHECK(bank.element == fifteen_ohm());
    REQUIRE(bank.alloy);
    CHECK(bank.alloy->id == "copper-nickel-44");
    CHECK(bank.owned == 1);
    CHECK(bank.each.basis == heatmatch::ResistanceBasis::measured);
    Element unknown = fifteen_ohm();
    unknown.alloy.clear();
    CHECK_FALSE(make_bank(starter(), unknown, {1, 1}, 0, 300.0).alloy);
    unknown.alloy = "unobtainium";
    CHECK_THROWS_AS(static_cast<void>(make_bank(starter(), unknown, {1, 1}, 0, 300.0)),
                    heatmatch::NotFound);
}

TEST_CASE("the coil temperature changes a bank's resistance") {
    Element element = fifteen_ohm();
    element.alloy = "nicr-60-15";
    // Source: GB/T 1234, 1.038 at 300 °C and 1.064 at 500 °C.
    CHECK(make_bank(starter(), element, {1, 1}, 0, 300.0).typical_ohm() ==
          doctest::Approx(15.0 * 1.038));
    CHECK(make_bank(starter(), element, {2, 1}, 0, 500.0).typical_ohm() ==
          doctest::Approx(30.0 * 1.064));
}
