#include "long_run.hpp"
#include "match/margins/screen_heat.hpp"
#include "store_bench.hpp"

#include <doctest/doctest.h>

#include "heatmatch/match/margins/limit_margins.hpp"
#include "heatmatch/match/margins/limits.hpp"
#include "heatmatch/match/margins/material_margins.hpp"
#include "heatmatch/match/margins/sheath_margins.hpp"

using heatmatch::Circuit;
using heatmatch::HeatPoint;
using heatmatch::Installation;
using heatmatch::Margin;
using heatmatch::Severity;
using heatmatch::StoreMaterial;

namespace {

/// A drum of two rods in sand, or of one element in water.
Circuit filled(const Installation& installation, bool water) {
    return water ? circuit_in(installation, "immersion-1500-120", 1, "water")
                 : circuit_in(installation, "storage-rod-1000-240", 2);
}

Margin made_of(const Circuit& circuit, double element_w, const char* name = "vessel material") {
    const auto point = heatmatch::heat_of(circuit, {.element_power_w = element_w});
    return margin_of(heatmatch::material_margins(circuit, point), name);
}

}  // namespace

TEST_CASE("the hot side of a vessel is that of the fill, at its hottest spot") {
    Installation installation = drum(0.40, 0.80);
    installation.store->side_u_w_m2k = 0.5;
    const Circuit circuit = filled(installation, false);
    const HeatPoint point = *heatmatch::heat_of(circuit, {.element_power_w = 150.0});
    // Lagging keeps its outside cool, and what lies under it hot.
    CHECK(point.inner_c > point.wall_c + 10.0);
    CHECK(point.inner_c >= point.lid_c);
    CHECK(point.inner_c < point.sheath_c);
    CHECK(point.stagnation_inner_c > point.inner_c);
    const Circuit water = filled(installation, true);
    const HeatPoint wet = *heatmatch::heat_of(water, {.element_power_w = 150.0});
    CHECK(wet.inner_c == wet.bed_mean_c);
    CHECK(wet.stagnation_inner_c > wet.stagnation_wall_c);
}

// Source: a finite-volume solution has no lid of its own; the closed form counts floor and lid
// alike where both lose as much, and legs are centred between them.
TEST_CASE("a floor that loses less than the lid is the hotter of the two") {
    Installation installation = drum(0.40, 0.80);
    installation.store->element_height_mm.reset();
    const auto inner_c = [&](double top_u, double bottom_u) {
        installation.store->top_u_w_m2k = top_u;
        installation.store->bottom_u_w_m2k = bottom_u;
        return heatmatch::heat_of(filled(installation, false), {.element_power_w = 300.0})->inner_c;
    };
    CHECK(inner_c(3.0, 0.3) > inner_c(3.0, 3.0));
    CHECK(inner_c(0.3, 3.0) == doctest::Approx(inner_c(3.0, 0.3)));
}

// Source: the closed form itself after fourteen days, with its lid and floor.
TEST_CASE("lid and floor of a stagnation are computed, and not taken from use") {
    for (const double u : {0.3, 4.0}) {
        for (const double hours : {3.0, 20.0}) {
            Installation installation = drum(0.57, 0.85);
            installation.store->side_u_w_m2k = u;
            installation.store->bottom_u_w_m2k = u;
            installation.store->charge_hours = hours;
            const Circuit circuit = filled(installation, false);
            CAPTURE(u);
            CAPTURE(hours);
            for (const double watts : {20.0, 100.0, 400.0}) {
                const HeatPoint point = circuit.heat->at(watts);
                double hottest_c = point.inner_c;
                for (const heatmatch::BedCharge* charge :
                     {&circuit.heat->stagnant, &circuit.heat->stagnant_out}) {
                    hottest_c = std::max(hottest_c,
                                         heatmatch::bed_temperatures(*charge, 2.0 * watts).inner_c);
                }
                CHECK(point.stagnation_inner_c == doctest::Approx(hottest_c).epsilon(1e-9));
                CHECK(point.stagnation_inner_c >= point.inner_c);
            }
        }
    }
}

// Limit: polystyrene 165 °F (73.9 °C), nia-insulation-guide.
TEST_CASE("a layer above its limit is a danger, just below it a caution") {
    Installation installation = drum(0.40, 0.80);
    installation.store->side_u_w_m2k = 0.5;
    installation.store->lagging = StoreMaterial::polystyrene;
    const Circuit circuit = filled(installation, false);
    const Margin hot = made_of(circuit, 300.0, "lagging material");
    CHECK(hot.severity == Severity::danger);
    CHECK(*hot.headroom < 0.0);
    CHECK(*hot.limit == 73.0);
    CHECK(contains(hot.sentence(), "polystyrene withstands 73 °C for years"));
    CHECK(made_of(circuit, 1.0, "lagging material").severity == Severity::none);
    int cautions = 0;
    for (double watts = 1.0; watts < 300.0; watts *= in_a_slow_build() ? 1.04 : 1.02) {
        const Margin margin = made_of(circuit, watts, "lagging material");
        check_judged(margin, margin.severity, *margin.value, 73.0, 20.0);
        cautions += margin.severity == Severity::caution ? 1 : 0;
    }
    CHECK(cautions > 0);
}

// Limit: 60 °C for polyethylene (ppfa-pipe-limits), the lowest: an unstated material may be it.
TEST_CASE("a layer that is not stated is not assessed, and a danger at worst where plastics fail") {
    Installation installation = drum();
    installation.store->vessel.reset();
    installation.store->liner.reset();
    installation.store->lagging.reset();
    const Circuit circuit = filled(installation, false);
    for (const auto& [name, field] : {std::pair{"vessel material", "store.vessel"},
                                      {"liner material", "store.liner"},
                                      {"lagging material", "store.lagging"}}) {
        const Margin margin = made_of(circuit, 200.0, name);
        check_not_assessed(margin, field);
        CHECK(margin.consequence == Severity::danger);
        CHECK(made_of(circuit, 5.0, name).consequence == Severity::warning);
    }
}

TEST_CASE("none has to agree with the other statements") {
    Installation installation = drum();
    installation.store->vessel = StoreMaterial::none;
    installation.store->liner = StoreMaterial::none;
    installation.store->lagging = StoreMaterial::none;
    CHECK(made_of(filled(installation, false), 200.0).severity == Severity::none);
    CHECK(made_of(filled(installation, false), 200.0, "liner material").severity == Severity::none);
    CHECK(made_of(filled(installation, false), 200.0, "lagging material").severity ==
          Severity::none);
    // Water does not stand by itself, and a bare wall loses more than 1 W/m2K.
    check_not_assessed(made_of(filled(installation, true), 200.0), "store.vessel");
    installation.store->side_u_w_m2k = 0.5;
    check_not_assessed(made_of(filled(installation, false), 200.0, "lagging material"),
                       "store.lagging");
}

TEST_CASE("lagging with an unstated heat loss is a warning at least") {
    Installation installation = drum();
    installation.store->lagging = StoreMaterial::stone_wool;
    const Margin margin = made_of(filled(installation, false), 10.0, "lagging material");
    CHECK(margin.severity == Severity::warning);
    CHECK(margin.missing == std::vector<std::string>{"store.side_u_w_m2k"});
    check_sentence(margin);
}

TEST_CASE("a limit softens it only if it acts before the layer has passed its own limit") {
    Installation installation = drum(0.40, 0.80);
    installation.store->side_u_w_m2k = 0.5;
    installation.store->lagging = StoreMaterial::none;
    installation.store->vessel = StoreMaterial::polyethylene;  // 60 °C
    const auto set_to = [&](double set_c, double element_w) {
        Circuit circuit = filled(installation, true);
        circuit.devices = {bench_device("dc-contactor-sealed-450-v", "breaks dc"),
                           bench_device("limit-controller-thermocouple", "senses only", 1, "")};
        circuit.devices.back().device.set_c = set_c;
        circuit.devices.back().device.set_tolerance_k = 2.0;
        circuit.devices.back().device.senses = heatmatch::SensedPlace::bed;
        circuit.devices.back().device.drives = {"dc-contactor-sealed-450-v"};
        circuit.devices.back().device.opens_on_supply_loss = true;
        circuit.devices.back().device.opens_on_probe_break = true;
        circuit.runs = {bench_run("silicone-14-awg", 30.0)};
        return std::pair{heatmatch::limit_counts(circuit, element_w), made_of(circuit, element_w)};
    };
    double watts = 10.0;  // warm in use, too hot after a fortnight
    while (*set_to(50.0, watts).second.value <= 62.0) watts *= 1.1;
    REQUIRE(*set_to(50.0, watts).second.value_low < 60.0);
    const auto [acts, softened] = set_to(50.0, watts);
    CHECK(acts);
    CHECK(softened.severity == Severity::warning);
    CHECK(*softened.headroom < 0.0);
    CHECK(contains(softened.sentence(), "must stop it before"));
    check_sentence(softened);
    const auto [late, hot] = set_to(70.0, watts);
    CHECK_FALSE(late);
    CHECK(hot.severity == Severity::danger);
    // In use it would be too hot with any limit.
    CHECK(set_to(50.0, 20.0 * watts).second.severity == Severity::danger);
    CHECK(*set_to(50.0, 20.0 * watts).second.headroom < 0.0);
}

TEST_CASE("more power never gives more headroom, and the screen agrees") {
    for (const bool water : {false, true}) {
        Installation installation = drum(0.40, 0.80);
        installation.store->side_u_w_m2k = 0.5;
        installation.store->vessel = StoreMaterial::polypropylene;
        installation.store->lagging = StoreMaterial::polyurethane;
        installation.store->vented = true;
        installation.store->element_covered = true;
        const Circuit circuit = filled(installation, water);
        double before = 2.0;
        for (double watts = 1.0; watts < 1000.0; watts *= 1.3) {
            const Margin vessel = made_of(circuit, watts);
            CHECK(*vessel.headroom <= before);
            before = *vessel.headroom;
            const auto screened =
                heatmatch::screen_heat(circuit, cold_site, {.element_power_w = watts});
            CHECK(screened.screened.headroom <= before);
        }
        const heatmatch::HeatLimit limit = heatmatch::heat_limit(circuit);
        CHECK(limit.reason == "vessel material");
        CHECK(*made_of(circuit, limit.element_w).headroom == doctest::Approx(0.0).epsilon(1e-6));
        CHECK(made_of(circuit, 1.01 * limit.element_w).severity == Severity::danger);
    }
}
