#include "bed_examples.hpp"
#include "refusal.hpp"
#include "within.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include <doctest/doctest.h>

#include "heatmatch/heat/sheath_temperature.hpp"

using heatmatch::Element;
using heatmatch::sheath_temperature;
using heatmatch::SheathTemperature;
using heatmatch::Store;
using heatmatch::StoreCharge;
using heatmatch::TemperatureBand;

namespace {

Store pot_of(const std::string& medium) {
    Store store = small_pot();
    store.medium = medium;
    return store;
}

SheathTemperature hairpin_in(const Store& store, const StoreCharge& charge, int elements = 1) {
    return sheath_temperature(heatmatch::find_medium(starter(), store.medium), store,
                              rod_of(0.22, 2, 0.05), elements, charge);
}

void check_band(const TemperatureBand& band, double coldest_c) {
    CHECK(band.low_c >= coldest_c);
    CHECK(band.typical_c >= band.low_c);
    CHECK(band.high_c >= band.typical_c);
}

std::string sheath_refusal(const StoreCharge& charge, const std::string& medium = "dry-sand",
                           const Element& element = rod_of(0.22, 2, 0.05)) {
    return refusal_of([&] {
        static_cast<void>(sheath_temperature(heatmatch::find_medium(starter(), medium),
                                             pot_of(medium), element, 1, charge));
    });
}

bool warns(const SheathTemperature& result, const std::string& piece) {
    return std::any_of(result.warnings.begin(), result.warnings.end(),
                       [&](const heatmatch::Sentence& each) { return contains(each, piece); });
}

std::ptrdiff_t assumptions(const SheathTemperature& result, const std::string& field) {
    return std::count_if(result.assumed.begin(), result.assumed.end(),
                         [&](const auto& each) { return each.field == field; });
}

}  // namespace

TEST_CASE("every fill of the starter gives bands, and a verdict above them") {
    for (const auto& medium : starter().media) {
        for (const double power_w : {10.0, 100.0}) {
            CAPTURE(medium.id);
            CAPTURE(power_w);
            const auto at = hairpin_in(pot_of(medium.id), {.power_w = power_w});
            for (const TemperatureBand& band :
                 {at.sheath_c, at.coil_c, at.bed_mean_c, at.wall_c, at.lid_c}) {
                check_band(band, 20.0);
            }
            CHECK(at.coil_c.typical_c > at.sheath_c.typical_c);
            CHECK(at.sheath_verdict_c >= at.sheath_c.high_c);
            CHECK(at.w_per_cm == doctest::Approx(power_w / 44.0));
            if (medium.form == heatmatch::MediumForm::liquid) continue;
            CHECK(at.sheath_c.high_c > at.sheath_c.typical_c);
            CHECK(at.sheath_c.typical_c > at.sheath_c.low_c);
        }
    }
}

// Source: the closed form itself at the three conductivities; 1.10 of the rise for the verdict.
TEST_CASE("the band is that of the conductivity, the verdict its hot end and a tenth more") {
    const auto at = hairpin_in(pot_of("dry-sand"), {.power_w = 100.0});
    const auto sheath = [](double k20) {
        return bed_temperatures(bed_of(small_pot(), rod_of(0.22, 2, 0.05), k20, 5.0), 100.0)
            .sheath_c;
    };
    CHECK(at.sheath_c.low_c == doctest::Approx(sheath(0.35)));
    CHECK(at.sheath_c.typical_c == doctest::Approx(sheath(0.27)));
    CHECK(at.sheath_c.high_c == doctest::Approx(sheath(0.17)));
    CHECK(at.sheath_verdict_c == doctest::Approx(20.0 + 1.10 * (sheath(0.17) - 20.0)));
    // Poor sand keeps the heat at the rod: the wall is hottest with the best.
    const auto wall = [](double k20) {
        return bed_temperatures(bed_of(small_pot(), rod_of(0.22, 2, 0.05), k20, 5.0), 100.0).wall_c;
    };
    CHECK(at.wall_c.high_c == doctest::Approx(wall(0.35)));
    CHECK(at.wall_c.low_c == doctest::Approx(wall(0.17)));
    CHECK(at.warnings.empty());
    CHECK(at.assumed.empty());
}

TEST_CASE("two elements share the power, and heat each other") {
    Store store = pot_of("dry-sand");
    store.element_spacing_mm = 60.0;
    const auto one = hairpin_in(store, {.power_w = 50.0});
    const auto two = hairpin_in(store, {.power_w = 100.0}, 2);
    CHECK(two.w_per_cm == doctest::Approx(one.w_per_cm));
    CHECK(two.sheath_c.typical_c > one.sheath_c.typical_c + 20.0);
    CHECK(two.sheath_c.typical_c < hairpin_in(store, {.power_w = 100.0}).sheath_c.typical_c);
}

// Source: at 5 % water sand conducts 5 to 8 times better, until it dries above 100 °C (from
// memory).
TEST_CASE("a moist bed is cooler than a dry one, and its drying is reported") {
    const auto dry = hairpin_in(pot_of("dry-sand"), {.power_w = 60.0});
    const auto moist = hairpin_in(pot_of("dry-sand"), {.power_w = 60.0, .moist = true});
    CHECK(moist.sheath_c.high_c < dry.sheath_c.low_c);
    CHECK(moist.sheath_c.typical_c - 20.0 < 0.4 * (dry.sheath_c.typical_c - 20.0));
    CHECK_FALSE(warns(hairpin_in(pot_of("dry-sand"), {.power_w = 30.0, .moist = true}), "dries"));
    const auto boiling = hairpin_in(pot_of("dry-sand"), {.power_w = 400.0, .moist = true});
    CHECK(boiling.sheath_c.high_c > 100.0);
    CHECK(warns(boiling, "dries"));
    CHECK_FALSE(warns(hairpin_in(pot_of("dry-sand"), {.power_w = 400.0}), "dries"));
    // Gravel has no moist values: it counts as dry, and that is listed.
    const auto gravel = hairpin_in(pot_of("dry-gravel"), {.power_w = 60.0, .moist = true});
    CHECK(assumptions(gravel, "moist_k_w_mk") == 1);
    CHECK(gravel.sheath_c.typical_c ==
          hairpin_in(pot_of("dry-gravel"), {.power_w = 60.0}).sheath_c.typical_c);
}

TEST_CASE("every assumption is listed, and once") {
    heatmatch::Medium sand = heatmatch::find_medium(starter(), "dry-sand");
    sand.grain_mm.reset();
    sand.k20_low_w_mk.reset();
    sand.k20_high_w_mk.reset();
    Store store = pot_of("dry-sand");
    store.top_u_w_m2k.reset();
    Element rod = rod_of(0.22, 2, 0.05);
    rod.leg_spacing_mm.reset();
    const auto at = sheath_temperature(sand, store, rod, 1, {.power_w = 100.0});
    for (const char* field : {"grain_mm", "k20_low_w_mk", "k20_high_w_mk", "top_u_w_m2k",
                              "leg_spacing_mm", "stone_mm", "gap to the stones around it"}) {
        CAPTURE(std::string(field));
        CHECK(assumptions(at, field) == 1);
    }
    CHECK(at.assumed.size() == 7);
}

// Source: energy into 15.5 kg of water, 4186 J/kgK, and free convection at a cylinder of 8 mm of
// some 1000 W/m2K in water (Churchill and Chu; from memory).
TEST_CASE("water warms as a whole, and the sheath stays near it") {
    const auto at = hairpin_in(pot_of("water"), {.power_w = 300.0, .hours = 0.25});
    const double litres = 1000.0 * heatmatch::store_shell(small_pot()).volume_m3;
    CHECK(within(at.bed_mean_c.typical_c - 20.0, 300.0 * 900.0 / (litres * 0.998 * 4186.0), 0.03));
    const double flux_w_m2 = 300.0 / (3.14159265 * 0.008 * 0.44);
    CHECK(within(at.sheath_c.typical_c - at.bed_mean_c.typical_c, flux_w_m2 / 1000.0, 0.01));
    CHECK(at.warnings.empty());
    const auto idle = hairpin_in(pot_of("water"), {.power_w = 0.0});
    CHECK(idle.sheath_c.high_c == doctest::Approx(20.0));
}

// Source: boiling at a surface is 10 to 25 K above 100 °C (from memory).
TEST_CASE("water never gets above 100 °C, and is warned about where it boils") {
    for (const double power_w : {500.0, 2000.0, 20000.0}) {
        for (const double days : {1.0, 30.0}) {
            const auto at =
                hairpin_in(pot_of("water"), {.power_w = power_w, .hours = 8.0, .days = days});
            CAPTURE(power_w);
            CHECK(at.bed_mean_c.high_c <= 100.0 + 1e-9);
            CHECK(at.sheath_c.high_c <= 125.0 + 1e-9);
            CHECK(at.sheath_c.high_c > 100.0);
            CHECK(warns(at, "boils"));
            CHECK(warns(at, "vent"));
        }
    }
    // At 18 W/cm2 the sheath boils locally in a barrel that is still cold.
    Store barrel = bright_store(0.58, 0.85);
    barrel.medium = "water";
    const auto cold = hairpin_in(barrel, {.power_w = 2000.0, .hours = 0.1});
    CHECK(cold.bed_mean_c.high_c < 25.0);
    CHECK(cold.sheath_c.typical_c > 105.0);
    CHECK_FALSE(warns(cold, "boils"));
}

TEST_CASE("a charge out of range is refused by name, value and range") {
    constexpr double nan = std::numeric_limits<double>::quiet_NaN();
    struct Row {
        StoreCharge charge;
        const char* field;
        const char* allowed;
    };
    for (const Row& row :
         {Row{{.power_w = -1.0}, "power_w = -1 W", ">= 0 W"},
          Row{{.power_w = nan}, "power_w = nan", ">= 0 W"},
          Row{{.power_w = std::numeric_limits<double>::infinity()}, "power_w = inf", ">= 0 W"},
          Row{{.power_w = 50.0, .hours = 0.0}, "hours = 0 h", "<= 24 h"},
          Row{{.power_w = 50.0, .hours = 30.0}, "hours = 30 h", "`days`"},
          Row{{.power_w = 50.0, .air_c = -300.0}, "air_c = -300 °C", ">= -60 °C"},
          Row{{.power_w = 50.0, .air_c = nan}, "air_c = nan", "<= 80 °C"},
          Row{{.power_w = 50.0, .days = 0.0}, "days = 0", ">= 1"}}) {
        for (const char* medium : {"dry-sand", "water"}) {
            const std::string message = sheath_refusal(row.charge, medium);
            CHECK(holds(message, "charge of the store"));
            CHECK(holds(message, row.field));
            CHECK(holds(message, row.allowed));
        }
    }
}

TEST_CASE("a misfit and a liquid as a bed are refused by name") {
    for (const char* medium : {"dry-sand", "water"}) {
        const std::string message = sheath_refusal({.power_w = 50.0}, medium, rod_of(0.6, 2, 0.05));
        CHECK(holds(message, "element \"rod\""));
        CHECK(holds(message, "600 mm"));
        CHECK(holds(message, "larger vessel"));
    }
    const heatmatch::Medium& water = heatmatch::find_medium(starter(), "water");
    const std::string message = refusal_of<heatmatch::InvalidInput>([&] {
        static_cast<void>(bed_charge(water, pot_of("water"), rod_of(0.22, 2, 0.05), 1, {},
                                     heatmatch::ConductivityEnd::low));
    });
    CHECK(holds(message, "medium \"water\""));
    CHECK(holds(message, "granular or solid"));
}

// Source: metal and magnesia by area: 170 J/mK at 8 mm (from memory).
TEST_CASE("a thicker rod holds more heat") {
    Element rod = rod_of(0.22, 2, 0.05);
    rod.sheath_diameter_mm = 16.0;
    const auto bed = bed_charge(heatmatch::find_medium(starter(), "dry-sand"), pot_of("dry-sand"),
                                rod, 1, {.power_w = 100.0, .hours = 7.0, .air_c = 3.0, .days = 2.0},
                                heatmatch::ConductivityEnd::low);
    CHECK(bed.rod_j_m_k == doctest::Approx(4.0 * 170.0));
    CHECK(bed.hours == 7.0);
    CHECK(bed.air_c == 3.0);
    CHECK(bed.days == 2.0);
}
