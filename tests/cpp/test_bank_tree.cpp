#include "dice.hpp"
#include "within.hpp"

#include <cmath>
#include <limits>
#include <numeric>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/match/circuit/bank_tree.hpp"

using heatmatch::BankTree;
using heatmatch::OperatingPoint;

namespace {

BankTree bank_of(const std::string& text) {
    return BankTree::parse(text, "circuit", "bank");
}

/// A random tree of `count` elements as text.
std::string random_tree(Dice& dice, int count) {
    if (count == 1) return "e";
    const int left = dice.from(1, count - 1);
    const char* join = dice.coin() ? " + " : " | ";
    return "[" + random_tree(dice, left) + "]" + join + "[" + random_tree(dice, count - left) + "]";
}

}  // namespace

// Source: arithmetic by hand. 10 + 20 beside 30 is 15 ohm; 60 V drive 2 A through each branch.
TEST_CASE("a tree's resistance and shares are those of Ohm's law by hand") {
    const BankTree bank = bank_of("[rod-a + rod-b] | rod-c");
    CHECK(bank.elements == std::vector<std::string>{"rod-a", "rod-b", "rod-c"});
    const std::vector<double> ohm{10.0, 20.0, 30.0};
    CHECK(within(bank.resistance_ohm(ohm), 15.0, 1e-12));
    const std::vector<OperatingPoint> points = bank.at_voltage(ohm, 60.0);
    CHECK(within(points[0].voltage_v, 20.0, 1e-12));
    CHECK(within(points[1].power_w, 80.0, 1e-12));
    CHECK(within(points[2].current_a, 2.0, 1e-12));
    // 12 ohm beside 12 ohm, twice in series, is 12 ohm.
    const std::vector<double> four(4, 12.0);
    CHECK(within(bank_of("[e | e] x2").resistance_ohm(four), 12.0, 1e-12));
    CHECK(within(bank_of("e x2 | e x2").resistance_ohm(four), 12.0, 1e-12));
}

// Source: Tellegen's theorem: the powers of the elements sum to that of the source.
TEST_CASE("the powers of a random tree sum to that of its source, open elements absorb nothing") {
    Dice dice(11);
    for (int i = 0; i < 500; ++i) {
        const int count = dice.from(1, 6);
        const BankTree bank = bank_of(random_tree(dice, count));
        REQUIRE(bank.elements.size() == static_cast<std::size_t>(count));
        std::vector<double> ohm;
        for (int k = 0; k < count; ++k) ohm.push_back(dice.between(1.0, 90.0));
        const double volts = dice.between(5.0, 120.0);
        const auto sum_w = [&] {
            double sum = 0.0;
            for (const OperatingPoint& each : bank.at_voltage(ohm, volts)) sum += each.power_w;
            return sum;
        };
        CHECK(within(sum_w(), volts * volts / bank.resistance_ohm(ohm), 1e-12));
        const double before_ohm = bank.resistance_ohm(ohm);
        const auto open = static_cast<std::size_t>(dice.from(0, count - 1));
        ohm[open] = std::numeric_limits<double>::infinity();
        CHECK(bank.resistance_ohm(ohm) > before_ohm);
        const auto points = bank.at_voltage(ohm, volts);
        CHECK(points[open].power_w == 0.0);
        CHECK(points[open].current_a == 0.0);
        const double left_ohm = bank.resistance_ohm(ohm);
        CHECK(std::fabs(sum_w() - (std::isinf(left_ohm) ? 0.0 : volts * volts / left_ohm)) <=
              1e-9 * volts * volts / before_ohm);
    }
}

// Source: arithmetic by hand. A current source of 4 A into two of 30 ohm in parallel gives 120 W
// each; with one open the other has all 4 A: 480 W.
TEST_CASE("what the others absorb when one opens follows the source, not a fixed voltage") {
    const std::vector<double> ohm{30.0, 30.0};
    const auto source = [](double resistance_ohm) -> OperatingPoint {
        if (std::isinf(resistance_ohm)) return {.voltage_v = 200.0};
        const double amperes = std::min(4.0, 200.0 / resistance_ohm);
        return {amperes * resistance_ohm, amperes, amperes * amperes * resistance_ohm};
    };
    const auto rows = heatmatch::with_each_open(bank_of("e | e"), ohm, source);
    REQUIRE(rows.size() == 2);
    CHECK(rows[0][0].power_w == 0.0);
    CHECK(within(rows[0][1].power_w, 480.0, 1e-12));
    const auto in_series = heatmatch::with_each_open(bank_of("e + e"), ohm, source);
    CHECK(in_series[0][1].power_w == 0.0);
}

TEST_CASE("a bank of more than six elements is one error") {
    CHECK_NOTHROW(static_cast<void>(bank_of("e x6")));
    CHECK_THROWS_WITH(static_cast<void>(bank_of("e x7")),
                      doctest::Contains("must be up to 6 elements"));
}
