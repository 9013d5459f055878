#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/quantity.hpp"
#include "heatmatch/base/units.hpp"
#include "heatmatch/parts/parts.hpp"
#include "heatmatch/setting/installation.hpp"

using heatmatch::convert;
using heatmatch::Dimension;
using heatmatch::display_unit;
using heatmatch::find_unit;
using heatmatch::format_number;
using heatmatch::format_quantity;
using heatmatch::round_significant;
using heatmatch::Unit;
using heatmatch::UnitSystem;
namespace unit = heatmatch::unit;

namespace {

Unit unit_named(const char* spelling) {
    const Unit* found = find_unit(spelling);
    REQUIRE_MESSAGE(found != nullptr, spelling);
    return *found;
}

double converted(double value, const char* from, const Unit& to) {
    CAPTURE(from);
    const Unit written = unit_named(from);
    REQUIRE(written.dimension == to.dimension);
    return convert(value, written, to);
}

/// Every unit in which some field or column of any record keeps a number.
std::vector<Unit> kept_units() {
    std::vector<Unit> units;
    const auto collect = [&units](std::span<const heatmatch::Field> fields) {
        for (const heatmatch::Field& field : fields) {
            units.push_back(field.unit);
            for (const heatmatch::Column& column : field.columns) units.push_back(column.unit);
        }
    };
    for (const heatmatch::PartKindInfo& info : heatmatch::part_kinds()) collect(info.fields);
    collect(heatmatch::site_fields());
    collect(heatmatch::monthly_normals_fields());
    collect(heatmatch::panel_measurement_fields());
    collect(heatmatch::owned_panels_fields());
    collect(heatmatch::element_filter_fields());
    collect(heatmatch::store_fields());
    collect(heatmatch::surroundings_fields());
    collect(heatmatch::wire_run_fields());
    collect(heatmatch::space_fields());
    collect(heatmatch::goals_fields());
    return units;
}

}  // namespace

// Source: the definitions of inch, foot, pound and degree Fahrenheit; arithmetic.
TEST_CASE("units of the trade convert by their definitions") {
    CHECK(converted(11.0, "in", unit::millimetre) == 279.4);
    CHECK(converted(1.0, "ft", unit::metre) == 0.3048);
    CHECK(converted(1.0, "ft2", unit::square_metre) == 0.09290304);
    CHECK(converted(1.0, "ft3", unit::cubic_metre) == 0.028316846592);
    CHECK(converted(1.0, "L", unit::cubic_metre) == 0.001);
    CHECK(converted(392.0, "°F", unit::celsius) == 200.0);
    CHECK(converted(32.0, "°F", unit::celsius) == 0.0);
    CHECK(converted(-40.0, "°F", unit::celsius) == -40.0);
    CHECK(converted(1.5, "kW", unit::watt) == 1500.0);
    CHECK(converted(250.0, "mA", unit::ampere) == 0.25);
    CHECK(converted(2.0, "kohm", unit::ohm) == 2000.0);
    CHECK(converted(500.0, "kohm", unit::ohm) == 500000.0);
    CHECK(converted(90.0, "min", unit::hour) == 1.5);
    CHECK(converted(-0.0034, "1/K", unit::percent_per_kelvin) == -0.34);
    CHECK(converted(1.0, "ohm/kft", unit::ohm_per_km) ==
          doctest::Approx(3.28083989501).epsilon(1e-11));
    CHECK(converted(-120.0, "mV/K", unit::volt_per_kelvin) == -0.12);
    CHECK(converted(36.0, "km/h", unit::metre_per_second) == 10.0);
    CHECK(converted(1.0, "mph", unit::metre_per_second) == 0.44704);
    CHECK(converted(2.54, "W/in", unit::watt_per_cm) == 1.0);
    CHECK(converted(1.0, "W/cm", unit::watt_per_m) == 100.0);
}

// Source: conversion factors of NIST SP 811, to the digits printed there.
TEST_CASE("thermal units agree with the printed factors") {
    CHECK(converted(1.0, "Btu/(h ft F)", unit::watt_per_m_k) ==
          doctest::Approx(1.730735).epsilon(1e-6));
    CHECK(converted(1.0, "Btu/(h ft2 F)", unit::watt_per_m2_k) ==
          doctest::Approx(5.678263).epsilon(1e-6));
    CHECK(converted(1.0, "Btu/lb·°F", unit::joule_per_kg_k) ==
          doctest::Approx(4186.8).epsilon(1e-9));
    CHECK(converted(1.0, "lb/ft3", unit::kilogram_per_m3) ==
          doctest::Approx(16.01846).epsilon(1e-6));
    CHECK(converted(1.0, "Btu/h", unit::watt) == doctest::Approx(0.2930711).epsilon(1e-6));
    CHECK(converted(1.0, "gal", unit::cubic_metre) == doctest::Approx(3.785412e-3).epsilon(1e-6));
}

// Source: arithmetic.
TEST_CASE("a conversion is rounded to twelve digits and keeps what needs none") {
    // 0.1 in is 2.54 mm, not 2.5399999999999996 or the like.
    for (int tenths = 1; tenths < 200; ++tenths) {
        const double millimetres = convert(tenths / 10.0, unit_named("in"), unit::millimetre);
        CHECK(millimetres == round_significant(millimetres, 12));
    }
    constexpr double third = 1.0 / 3.0;
    CHECK(convert(third, unit::volt, unit::volt) == third);
    CHECK(convert(third, unit::metre, unit::millimetre) == 333.333333333);
}

TEST_CASE("rounding keeps the requested digits, and values without digits") {
    CHECK(round_significant(123456.0, 3) == 123000.0);
    CHECK(round_significant(-0.00123456, 3) == -0.00123);
    CHECK(round_significant(0.0, 3) == 0.0);
    CHECK(round_significant(5e-324, 3) == 5e-324);
    CHECK(std::isinf(round_significant(std::numeric_limits<double>::infinity(), 3)));
    CHECK(std::isnan(round_significant(std::nan(""), 3)));
}

TEST_CASE("a unit is found by the spellings people use, and by no other") {
    for (const std::string spelling :
         {"V",   "volts", "A",    "amps", "ohm",  "ohms", "\u2126", "\u03a9", "W",
          "kW",  "°C",    "degC", "°F",   "F",    "mm",   "in",     "inches", "\"",
          "ft",  "mm2",   "mm²",  "m3",   "W/mK", "%/K",  "%/°C",   "mV/K",   "h",
          "1/h", "Volts", "VDC",  "OHM",  "AMPS", "mm^2"}) {
        CAPTURE(spelling);
        CHECK(find_unit(spelling) != nullptr);
    }
    for (const std::string spelling :
         {"", " ", "V ", "Volt2", "parsec", "ohm/", "°", "K/%", "MM", "MOHM", "MW", "ohm/KM"}) {
        CAPTURE(spelling);
        const bool degree_of_angle = std::string(spelling) == "°";
        CHECK((find_unit(spelling) != nullptr) == degree_of_angle);
    }
}

// A value that is printed and typed back, in either unit set, must be understood: read with the
// unit it was printed with, it is the value it was, to the twelve digits printed.
TEST_CASE("a printed value with a unit can be read back") {
    for (const UnitSystem system : {UnitSystem::si, UnitSystem::us}) {
        for (const Unit& kept : kept_units()) {
            const bool gauge = system == UnitSystem::us && kept == unit::square_millimetre;
            const std::string text = format_quantity(12.5, kept, system, 12);
            CAPTURE(text);
            double read = 0.0;
            CHECK_NOTHROW(read = heatmatch::parse_quantity(text, kept));
            // A gauge is the nearest size, up to 12 % away in area.
            CHECK(read == doctest::Approx(12.5).epsilon(gauge ? 0.12 : 1e-10));
        }
    }
}

TEST_CASE("each unit set shows the unit its people read") {
    CHECK(format_quantity(200.0, unit::celsius, UnitSystem::us) == "392 °F");
    CHECK(format_quantity(200.0, unit::celsius, UnitSystem::si) == "200 °C");
    CHECK(format_quantity(10.0, unit::kelvin, UnitSystem::us) == "18 °F");
    CHECK(format_quantity(279.4, unit::millimetre, UnitSystem::us) == "11 in");
    CHECK(format_quantity(3.048, unit::metre, UnitSystem::us) == "10 ft");
    CHECK(format_quantity(2.54, unit::centimetre, UnitSystem::us) == "1 in");
    CHECK(format_quantity(1.0, unit::watt_per_cm, UnitSystem::us) == "2.54 W/in");
    CHECK(format_quantity(100.0, unit::watt_per_m, UnitSystem::us) == "30.48 W/ft");
    CHECK(format_quantity(100.0, unit::watt_per_m, UnitSystem::si) == "100 W/m");
    CHECK(format_quantity(2.081, unit::square_millimetre, UnitSystem::us) == "14 AWG");
    CHECK(format_quantity(2.081, unit::square_millimetre, UnitSystem::si) == "2.081 mm2");
    CHECK(format_quantity(240.0, unit::volt, UnitSystem::us) == "240 V");
    CHECK(format_quantity(25.0, unit::percent, UnitSystem::si) == "25%");
    CHECK(format_quantity(4.0, unit::count, UnitSystem::us) == "4");
    CHECK(display_unit(unit::watt, UnitSystem::us) == unit::watt);
}

TEST_CASE("numbers are printed short") {
    CHECK(format_number(1200.0) == "1200");
    CHECK(format_number(0.1) == "0.1");
    CHECK(format_number(-0.0) == "0");
    CHECK(format_number(1234567.0, 4) == "1234567");
    CHECK(format_number(2.5e-10) == "2.5e-10");
    CHECK(format_number(1e300) == "1e+300");
    CHECK(format_number(std::numeric_limits<double>::infinity()) == "infinite");
    CHECK(format_number(-std::numeric_limits<double>::infinity()) == "-infinite");
    CHECK(format_number(std::nan("")) == "nan");
}
