#include "refusal.hpp"

#include <array>
#include <string>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/parts/parts.hpp"

using heatmatch::check_part;
using heatmatch::Element;
using heatmatch::InvalidInput;

namespace {

Element rated_rod(double volts, double watts) {
    return {.id = "rod",
            .label = "Rod",
            .family = "tubular",
            .rated_v = volts,
            .rated_w = watts,
            .provenance = {.source = "label", .source_kind = heatmatch::SourceKind::nameplate}};
}

struct Rating {
    double volts;
    double watts;
    double ohms;
    const char* text;  //!< the ohms as a message prints them, to six digits
};

// Source: arithmetic, V²/P of ratings that are common in kitchens, boilers and workshops.
constexpr auto common_ratings = std::to_array<Rating>({
    {120.0, 750.0, 19.2, "19.2 ohm"},
    {120.0, 1000.0, 14.4, "14.4 ohm"},
    {120.0, 1500.0, 9.6, "9.6 ohm"},
    {120.0, 2000.0, 7.2, "7.2 ohm"},
    {208.0, 4500.0, 208.0 * 208.0 / 4500.0, "9.61422 ohm"},
    {230.0, 850.0, 230.0 * 230.0 / 850.0, "62.2353 ohm"},
    {230.0, 1000.0, 52.9, "52.9 ohm"},
    {230.0, 1200.0, 230.0 * 230.0 / 1200.0, "44.0833 ohm"},
    {230.0, 2000.0, 26.45, "26.45 ohm"},
    {230.0, 3000.0, 230.0 * 230.0 / 3000.0, "17.6333 ohm"},
    {240.0, 1000.0, 57.6, "57.6 ohm"},
    {240.0, 2585.0, 240.0 * 240.0 / 2585.0, "22.2824 ohm"},
    {240.0, 3500.0, 240.0 * 240.0 / 3500.0, "16.4571 ohm"},
    {240.0, 4500.0, 12.8, "12.8 ohm"},
    {240.0, 5500.0, 240.0 * 240.0 / 5500.0, "10.4727 ohm"},
    {12.0, 200.0, 0.72, "0.72 ohm"},
    {24.0, 600.0, 0.96, "0.96 ohm"},
    {48.0, 1000.0, 2.304, "2.304 ohm"},
});

}  // namespace

TEST_CASE("resistance agrees with voltage squared over power for common ratings") {
    for (const Rating& rating : common_ratings) {
        CAPTURE(rating.volts);
        CAPTURE(rating.watts);
        Element element = rated_rod(rating.volts, rating.watts);
        CHECK(part_refusal(element) == "(accepted)");
        for (const double share : {0.76, 1.0, 1.24}) {
            element.resistance_ohm = share * rating.ohms;
            element.measured_resistance_ohm = share * rating.ohms;
            CHECK(part_refusal(element) == "(accepted)");
        }
        for (const double share : {0.1, 0.74, 1.26, 4.0}) {
            element.resistance_ohm = rating.ohms;
            element.measured_resistance_ohm = share * rating.ohms;
            CHECK(holds(part_refusal(element), "element \"rod\": measured_resistance_ohm"));
            CHECK(holds(part_refusal(element), std::string("rated_v² / rated_w = ") + rating.text));
            element.resistance_ohm = share * rating.ohms;
            element.measured_resistance_ohm.reset();
            CHECK(holds(part_refusal(element), "element \"rod\": resistance_ohm"));
        }
    }
}

// A lamp or a PTC block is far off its rating when cold; the alloy says so.
TEST_CASE("a resistance far from the rating is kept where an alloy explains it") {
    Element lamp = rated_rod(230.0, 1000.0);
    lamp.measured_resistance_ohm = 4.0;
    CHECK(holds(part_refusal(lamp), "name an alloy"));
    lamp.alloy = "tungsten";
    CHECK(part_refusal(lamp) == "(accepted)");
}

TEST_CASE("the resistance must be determined by some field") {
    Element element = rated_rod(240.0, 1000.0);
    element.rated_w.reset();
    CHECK(holds(part_refusal(element),
                "give measured resistance, printed resistance, or rated_v and rated_w"));
    element.rated_v.reset();
    element.rated_w = 1000.0;
    CHECK(holds(part_refusal(element), "measured_resistance_ohm = (missing)"));
    element.resistance_ohm = 57.6;
    CHECK(part_refusal(element) == "(accepted)");
    element.resistance_ohm.reset();
    element.measured_resistance_ohm = 58.1;
    CHECK(part_refusal(element) == "(accepted)");
}

// Source: arithmetic, 1000 W over pi 0.8 cm 100 cm is 3.979 W/cm2.
TEST_CASE("watt density is power over the heated surface") {
    Element element = rated_rod(240.0, 1000.0);
    CHECK_FALSE(element.watt_density_w_cm2().has_value());
    element.sheath_diameter_mm = 8.0;
    CHECK_FALSE(element.watt_density_w_cm2().has_value());
    element.heated_length_mm = 1000.0;
    REQUIRE(element.watt_density_w_cm2().has_value());
    CHECK(*element.watt_density_w_cm2() == doctest::Approx(3.978874).epsilon(1e-6));
}

TEST_CASE("values out of range are refused with the range") {
    Element element = rated_rod(240.0, 1000.0);
    element.legs = 0;
    CHECK(holds(part_refusal(element), "legs = 0 must be >= 1 and <= 60"));
    element.legs = 2;
    element.power_tolerance_plus_pct = -5.0;
    CHECK(holds(part_refusal(element), "power_tolerance_plus_pct = -5%"));
    element.power_tolerance_plus_pct = 5.0;
    element.rated_v = 0.0;
    CHECK(holds(part_refusal(element), "rated_v = 0 V"));
}
