#include <string>

#include <doctest/doctest.h>

#include "heatmatch/base/awg.hpp"
#include "heatmatch/base/error.hpp"
#include "heatmatch/base/quantity.hpp"

using heatmatch::Dimension;
using heatmatch::InvalidInput;
using heatmatch::parse_quantity;
using heatmatch::Quantity;
using heatmatch::Unit;
namespace unit = heatmatch::unit;

namespace {

std::string quantity_refusal(const std::string& text) {
    try {
        static_cast<void>(parse_quantity(text));
    } catch (const InvalidInput& error) {
        return error.what();
    }
    return "(read)";
}

std::string quantity_refusal(const std::string& text, const Unit& kept) {
    try {
        static_cast<void>(parse_quantity(text, kept));
    } catch (const InvalidInput& error) {
        return error.what();
    }
    return "(read)";
}

}  // namespace

TEST_CASE("a bare number has no unit and is in the unit of the field") {
    for (const std::string text : {"15", " 15 ", "+15", "15.0", "1.5e1", "150e-1", "30/2"}) {
        CAPTURE(text);
        const Quantity read = parse_quantity(text);
        CHECK(read.value == 15.0);
        CHECK_FALSE(read.has_unit);
        CHECK(parse_quantity(text, unit::ohm) == 15.0);
    }
    CHECK(parse_quantity("-0.35", unit::percent_per_kelvin) == -0.35);
    CHECK(parse_quantity(".5", unit::ohm) == 0.5);
    // Word processors write a minus sign that is not a hyphen.
    CHECK(parse_quantity("\u2212"
                         "0.35 %/K",
                         unit::percent_per_kelvin) == -0.35);
}

// Source: arithmetic on the definitions of the units; a gauge by ASTM B258.
TEST_CASE("a number with its unit is read into the unit the field keeps") {
    CHECK(parse_quantity("15 ohm", unit::ohm) == 15.0);
    CHECK(parse_quantity("15ohms", unit::ohm) == 15.0);
    CHECK(parse_quantity("15 \u03a9", unit::ohm) == 15.0);
    CHECK(parse_quantity("15\u00a0OHM", unit::ohm) == 15.0);
    CHECK(parse_quantity("12 ga").value == parse_quantity("12 AWG").value);

    CHECK(parse_quantity("11 in", unit::millimetre) == 279.4);
    CHECK(parse_quantity("11\"", unit::millimetre) == 279.4);
    CHECK(parse_quantity("5/16 in", unit::millimetre) == 7.9375);
    CHECK(parse_quantity("392 °F", unit::celsius) == 200.0);
    CHECK(parse_quantity("473.15 K", unit::celsius) == 200.0);
    CHECK(parse_quantity("1.5 kW", unit::watt) == 1500.0);
    CHECK(parse_quantity("18 °F", unit::kelvin) == 10.0);
    CHECK(parse_quantity("10 °C", unit::kelvin) == 10.0);
    CHECK(parse_quantity("2 %", unit::none) == 0.02);
    CHECK(parse_quantity("0.5 1/h", unit::air_changes_per_hour) == 0.5);
    CHECK(parse_quantity("14 AWG", unit::square_millimetre) ==
          doctest::Approx(2.0808).epsilon(1e-4));
    CHECK(parse_quantity("14AWG", unit::square_millimetre) ==
          parse_quantity("14 awg", unit::square_millimetre));
}

// Source: ASTM B258, 4/0 has 0.46 in or 11.684 mm: pi/4 of its square is 107.219 mm2.
TEST_CASE("large gauges are read with their strokes") {
    CHECK(parse_quantity("4/0 AWG", unit::square_millimetre) ==
          doctest::Approx(107.219).epsilon(1e-5));
    CHECK(parse_quantity("1/0 AWG", unit::square_millimetre) ==
          parse_quantity("0 AWG", unit::square_millimetre));
    // As every other converted value, it is rounded to twelve digits.
    for (const std::string text : {"1/0 AWG", "2/0 AWG", "3/0 AWG", "4/0 AWG"}) {
        CAPTURE(text);
        const double area = parse_quantity(text, unit::square_millimetre);
        CHECK(area == heatmatch::round_significant(area, 12));
    }
    CHECK(parse_quantity("2/0 awg", unit::square_millimetre) ==
          parse_quantity("2/0 AWG", unit::square_millimetre));
}

TEST_CASE("a gauge that does not exist is refused") {
    for (const std::string text : {"41 AWG", "-1 AWG", "14.5 AWG", "5/0 AWG", "0/0 AWG", "-2/0 AWG",
                                   "1.5/0 AWG", "1e9/0 AWG"}) {
        CAPTURE(text);
        CHECK(quantity_refusal(text, unit::square_millimetre).find("AWG") != std::string::npos);
        CHECK_THROWS_AS(static_cast<void>(parse_quantity(text, unit::square_millimetre)),
                        InvalidInput);
    }
    CHECK(quantity_refusal("14 AWG", unit::ohm).find("an area") != std::string::npos);
}

TEST_CASE("a number that can be read in two ways is refused") {
    for (const std::string text : {"5,5", "1,000", "1,000.5 V", "5,5 ohm", "1,5e3"}) {
        CAPTURE(text);
        const std::string message = quantity_refusal(text);
        CHECK(message.find(text) != std::string::npos);
        CHECK(message.find("an unambiguous number") != std::string::npos);
        CHECK(message.find("point for decimals") != std::string::npos);
    }
}

TEST_CASE("a text that is not a number is refused and quoted") {
    for (const std::string text :
         {"ohm", "fifteen ohm", "nan",   "inf", "-inf",       "infinity", "--5",
          "+-5", "- 5",         "e5",    ".",   "0x10",       "1.2.3",    "5 5",
          "5;5", "15 ohm ohm",  "1 000", "1/x", "5 16/32 in", "15 _",     "$15"}) {
        CAPTURE(text);
        const std::string message = quantity_refusal(text);
        CHECK(message.find('"' + std::string(text) + '"') != std::string::npos);
        CHECK(message.find("must be") != std::string::npos);
    }
    CHECK(quantity_refusal("").find("omit the field") != std::string::npos);
    CHECK(quantity_refusal("  \t ").find("omit the field") != std::string::npos);
    CHECK(quantity_refusal("12 parsec").find("\"parsec\"") != std::string::npos);
}

TEST_CASE("a number that is not finite is refused") {
    for (const std::string text :
         {"1e400", "-1e400", "1e309 V", "1/0", "1/0 in", "1e300/1e-300", "1e308 kV", "-1e308 kW"}) {
        CAPTURE(text);
        CHECK_THROWS_AS(static_cast<void>(parse_quantity(text, unit::none)), InvalidInput);
    }
    CHECK_THROWS_AS(static_cast<void>(parse_quantity("1e300/1e-300")), InvalidInput);
    CHECK_THROWS_AS(static_cast<void>(parse_quantity("1e308 kV", unit::volt)), InvalidInput);
}

TEST_CASE("a unit of another dimension is refused by both names") {
    const auto expect = [](const std::string& text, const Unit& kept, const char* wrong,
                           const char* wanted) {
        CAPTURE(text);
        const std::string message = quantity_refusal(text, kept);
        CHECK(message.find(text) != std::string::npos);
        CHECK(message.find(wrong) != std::string::npos);
        CHECK(message.find(wanted) != std::string::npos);
    };
    expect("15 V", unit::ohm, "a voltage", "a resistance");
    expect("15 ohm", unit::volt, "a resistance", "a voltage");
    expect("200 °C", unit::watt, "a temperature", "a power");
    expect("3 mm", unit::square_millimetre, "a length", "an area");
    expect("120 mV/K", unit::percent_per_kelvin, "a voltage per kelvin", "temperature coefficient");
    expect("4 V", unit::count, "a voltage", "bare number");
    expect("4 V", unit::money, "a voltage", "bare number");
}

TEST_CASE("a long wrong text is not quoted whole") {
    const std::string message = quantity_refusal(std::string(100000, 'x'));
    CHECK(message.size() < 300);
    CHECK(message.find("...") != std::string::npos);
}
