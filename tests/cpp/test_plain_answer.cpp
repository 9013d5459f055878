#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/answer/plain_answer.hpp"
#include "heatmatch/base/units.hpp"

using heatmatch::PlainAnswer;
using heatmatch::read_plain_answer;

TEST_CASE("an answer is taken apart into amounts, words and a note") {
    const PlainAnswer read = read_plain_answer("4 x 37.5 V 8.7 A, 12 years # its label");
    CHECK(read.note == "its label");
    CHECK(read.text == "4 x 37.5 V 8.7 A, 12 years");
    CHECK(read.times);
    REQUIRE(read.pieces());
    CHECK(*read.pieces() == 4.0);
    CHECK(read.of(heatmatch::unit::volt) == std::vector<double>{37.5});
    CHECK(read.of(heatmatch::unit::ampere) == std::vector<double>{8.7});
    CHECK(!read.unknown());
    CHECK(!read.has_word("panel"));
}

TEST_CASE("signs of word processors, fractions and feet are read") {
    const PlainAnswer read = read_plain_answer("\u221226 °F, 1/2 in \u00d7 8 ft");
    REQUIRE(read.amounts.size() == 3);
    CHECK(read.amounts[0].value == doctest::Approx(-26.0).epsilon(1e-12));
    CHECK(read.amounts[1].value == doctest::Approx(0.5).epsilon(1e-12));
    CHECK(read.amounts[2].value == doctest::Approx(8.0).epsilon(1e-12));
    CHECK(read.amounts[2].has_unit);
}

TEST_CASE("what is not known is said in several ways, and an unclear number is kept") {
    for (const char* text : {"", "  ", "?", "unknown", "Don't know", "no idea # ask later"}) {
        CAPTURE(text);
        CHECK(read_plain_answer(text).unknown());
    }
    CHECK(!read_plain_answer("about 5").unknown());
    CHECK(!read_plain_answer("1,000 W").unclear.empty());
    CHECK(read_plain_answer("1000 W").unclear.empty());
    CHECK(read_plain_answer("4, 5").unclear.empty());
    // A word that begins with a number is no number.
    const PlainAnswer cells = read_plain_answer("60-cell panels");
    CHECK(cells.amounts.empty());
    CHECK(cells.has_word("60-cell"));
    CHECK(cells.has_word("panels"));
}
