#include "store_bench.hpp"

#include <set>

#include <doctest/doctest.h>

#include "heatmatch/match/margins/sheath_margins.hpp"
#include "heatmatch/match/margins/store_margins.hpp"

using heatmatch::Circuit;
using heatmatch::Margin;
using heatmatch::Severity;
using heatmatch::UnitSystem;

namespace {

std::vector<Margin> sheath_margins_at(const Circuit& circuit, double element_w) {
    return heatmatch::sheath_margins(circuit,
                                     heatmatch::heat_of(circuit, {.element_power_w = element_w}));
}

/// Two rods in a drum of sand whose sheaths stand that much.
Circuit rods_in_sand(bool moist, double limit_c) {
    heatmatch::Installation installation = drum();
    installation.store->moist = moist;
    Circuit circuit = circuit_in(installation, "storage-rod-1000-240", 2);
    heatmatch::Bank& bank = circuit.bank;
    bank.sheath->verdict_limit_c = limit_c;
    bank.sheath->hard_limit_c = limit_c;
    circuit.heat = heatmatch::bank_heat(heatmatch::fill_store(starter(), installation),
                                        bank.element, bank.sheath, bank.alloy, 2);
    return circuit;
}

}  // namespace

TEST_CASE("without a store, sizes or lengths nothing is called good") {
    Circuit circuit;
    circuit.bank.element.id = "some-rod";
    std::set<std::string> names;
    for (const Margin& margin : heatmatch::sheath_margins(circuit, std::nullopt)) {
        // No limit is listed: that is known, and bad, without a store.
        if (margin.subject == "circuit") {
            CHECK(margin.severity == Severity::warning);
            continue;
        }
        names.insert(margin.name);
        check_not_assessed(margin, "store");
    }
    CHECK(names == std::set<std::string>{"fit in store", "sheath temperature", "coil temperature",
                                         "settled sand", "stagnation"});
    heatmatch::Installation unsized = drum();
    unsized.store->height_m.reset();
    for (const Margin& margin :
         sheath_margins_at(circuit_in(unsized, "storage-rod-1000-240", 2), 100.0)) {
        if (margin.subject != "circuit") check_not_assessed(margin, "height_m");
    }
    for (const Margin& margin :
         sheath_margins_at(circuit_in(drum(), "silicone-pad-250-120", 2), 100.0)) {
        if (margin.subject != "circuit") check_not_assessed(margin, "heated_length_mm");
    }
}

// Limits: UL 1030 as tabulated, and what is left of it for years of service: 760 °C for alloy 840.
TEST_CASE("the sheath exceeds its limit as the power per centimeter rises") {
    const Circuit circuit = circuit_in(drum(), "storage-rod-1000-240", 2);
    const double most_w = *circuit.heat->largest_element_w(false);
    const Margin within = margin_of(sheath_margins_at(circuit, 0.5 * most_w), "sheath temperature");
    check_judged(within, Severity::none, *within.value, 760.0, 20.0);
    CHECK(*within.value_low < *within.value_high);
    CHECK(*within.value_high < *within.value);  // the model's error counted
    CHECK(contains(within.sentence(), " W/cm for 6 h a day the sheath reaches "));
    CHECK(contains(within.sentence(UnitSystem::us), " W/in for 6 h a day the sheath reaches "));
    CHECK_FALSE(contains(within.sentence(), "W/in"));
    check_sentence(within);
    CHECK(margin_of(sheath_margins_at(circuit, 0.9999 * most_w), "sheath temperature").severity ==
          Severity::caution);
    CHECK(margin_of(sheath_margins_at(circuit, 1.0001 * most_w), "sheath temperature").severity ==
          Severity::danger);
    // At rated watts, 6.9 W/cm, it burns out: common practice, no source.
    CHECK(margin_of(sheath_margins_at(circuit, 1000.0), "sheath temperature").severity ==
          Severity::danger);
}

TEST_CASE("copper and unknown sheaths are distinguished") {
    Circuit circuit = circuit_in(drum(), "immersion-4500-240", 1);
    CHECK(margin_of(sheath_margins_at(circuit, 100.0), "sheath temperature").severity ==
          Severity::danger);
    CHECK(*margin_of(sheath_margins_at(circuit, 100.0), "sheath temperature").limit == 150.0);
    heatmatch::Element unknown = circuit.bank.element;
    unknown.sheath.clear();
    circuit.heat =
        heatmatch::bank_heat(circuit.heat->store, unknown, std::nullopt, std::nullopt, 1);
    check_not_assessed(margin_of(sheath_margins_at(circuit, 100.0), "sheath temperature"),
                       "sheath");
    CHECK(margin_of(sheath_margins_at(circuit, 100.0), "sheath temperature").value);
    CHECK_FALSE(circuit.heat->largest_element_w(true));
}

TEST_CASE("elements that do not fit are a danger with the sizes, and not an exception") {
    heatmatch::Installation pot = drum();
    pot.store->diameter_m = 0.27;
    pot.store->height_m = 0.27;
    const Circuit circuit = circuit_in(pot, "storage-rod-1000-240", 2);
    const std::vector<Margin> margins = sheath_margins_at(circuit, 100.0);
    const Margin fit = margin_of(margins, "fit in store");
    CHECK(fit.severity == Severity::danger);
    CHECK(contains(fit.sentence(), "725 mm"));
    CHECK(contains(fit.sentence(), "270 mm"));
    check_not_assessed(margin_of(margins, "sheath temperature"), "an element that fits");
    CHECK(*circuit.heat->largest_element_w(true) == 0.0);
}

TEST_CASE("stagnation rejects unless an independent limit can open the circuit") {
    heatmatch::Installation installation = drum();
    installation.store->side_u_w_m2k = 0.4;
    installation.store->top_u_w_m2k = 0.4;
    installation.store->bottom_u_w_m2k = 0.4;
    Circuit circuit = circuit_in(installation, "storage-rod-1000-240", 2);
    const double by_day = *circuit.heat->largest_element_w(false);
    const double by_fortnight = *circuit.heat->largest_element_w(true);
    CHECK(by_fortnight < by_day);
    const double between = 0.5 * (by_day + by_fortnight);
    const Margin alone = margin_of(sheath_margins_at(circuit, between), "stagnation");
    CHECK(alone.severity == Severity::danger);
    heatmatch::PlacedDevice limit =
        bench_device("limit-controller-thermocouple", "senses only", 1, "");
    limit.device.set_c = 100.0;
    limit.device.set_tolerance_k = 5.0;
    limit.device.senses = heatmatch::SensedPlace::bed;
    circuit.runs = {bench_run("thhn-12-awg", 30.0)};
    const auto limited_by = [&](const heatmatch::PlacedDevice& by) {
        circuit.devices = {by, bench_device("dc-contactor-sealed-450-v", "breaks dc")};
        return margin_of(sheath_margins_at(circuit, between), "stagnation");
    };
    // Its driven devices are not stated: no severity is reduced.
    CHECK(limited_by(limit).severity == Severity::danger);
    limit.device.drives = {"dc-contactor-sealed-450-v"};
    const Margin limited = limited_by(limit);
    CHECK(limited.severity == Severity::warning);
    CHECK(contains(limited.sentence(), "independent limit"));
    CHECK(*limited.value == *alone.value);
    // Set so high that the sheath is gone before, or on a wall that stays cool: too late.
    limit.device.set_c = 600.0;
    CHECK(limited_by(limit).severity == Severity::danger);
    limit.device.set_c = 100.0;
    limit.device.senses = heatmatch::SensedPlace::wall;
    CHECK(limited_by(limit).severity == Severity::danger);
}

TEST_CASE("settled sand makes a hotter spot than packed sand") {
    const Circuit circuit = circuit_in(drum(), "storage-rod-1000-240", 2);
    const heatmatch::HeatPoint point = *heatmatch::heat_of(circuit, {.element_power_w = 150.0});
    CHECK(point.void_c > point.sheath_band.typical_c);
    CHECK(margin_of(sheath_margins_at(circuit, 150.0), "settled sand").severity == Severity::none);
    CHECK(margin_of(sheath_margins_at(circuit, 1000.0), "settled sand").severity ==
          Severity::warning);
}

TEST_CASE("headrooms of heat fall as the power rises") {
    const Circuit circuit = circuit_in(drum(), "storage-rod-1000-240", 2);
    std::vector<Margin> before = sheath_margins_at(circuit, 10.0);
    for (double watts = 40.0; watts <= 1500.0; watts *= 1.3) {
        const std::vector<Margin> now = sheath_margins_at(circuit, watts);
        for (std::size_t i = 0; i < now.size(); ++i) {
            if (!now[i].headroom || now[i].name == "fit in store") continue;
            CAPTURE(now[i].name);
            CAPTURE(watts);
            CHECK(*now[i].headroom < *before[i].headroom);
        }
        before = now;
    }
}

TEST_CASE("the remaining branches are assessed at their power after one opens") {
    const Circuit circuit = circuit_in(drum(), "storage-rod-1000-240", 2);
    const auto at = [&circuit](double survivor_w) {
        return heatmatch::survivor_sheath_margin(circuit, {.survivor_power_w = survivor_w});
    };
    const heatmatch::Circuit one = circuit_in(drum(), "storage-rod-1000-240", 1);
    CHECK(*at(300.0).value == one.heat->at(300.0).sheath_c);
    CHECK(at(50.0).severity == heatmatch::Severity::none);
    CHECK(at(1000.0).severity == heatmatch::Severity::danger);
    CHECK(heatmatch::survivor_sheath_margin(one, {.survivor_power_w = 1000.0}).severity ==
          heatmatch::Severity::none);
    heatmatch::Circuit unknown = circuit;
    unknown.heat = nullptr;
    CHECK(heatmatch::survivor_sheath_margin(unknown, {}).severity ==
          heatmatch::Severity::not_assessed);
}

// Source: the limits of sheaths as UL 1030 has them; the watts by inversion of the same model.
TEST_CASE(
    "the sheath of remaining branches is a warning above the limit for years, a danger "
    "where it fails") {
    const Circuit circuit = circuit_in(drum(), "storage-rod-1000-240", 2);
    const auto left = heatmatch::survivors_of(circuit);
    const double fails_w = *left->largest_lasting_w();
    const double years_w = *left->largest_element_w(false);
    REQUIRE(years_w < fails_w);
    const auto at = [&circuit](double survivor_w) {
        return heatmatch::survivor_sheath_margin(circuit, {.survivor_power_w = survivor_w});
    };
    CHECK(at(0.99 * years_w).severity != Severity::warning);
    const Margin between = at(0.5 * (years_w + fails_w));
    CHECK(between.severity == Severity::warning);
    CHECK(between.consequence == Severity::danger);
    CHECK(*between.limit == circuit.bank.sheath->hard_limit_c);
    check_sentence(between);
    CHECK(at(0.999 * fails_w).severity == Severity::warning);
    CHECK(at(1.001 * fails_w).severity == Severity::danger);
    CHECK(*at(fails_w).headroom == doctest::Approx(0.0).epsilon(1e-6));
    CHECK(*at(300.0).headroom == *heatmatch::survivor_headroom(*left, 300.0));
    check_sentence(at(1.001 * fails_w));
}

// Source: the rule that a margin keeps its name and subject whatever is unknown.
TEST_CASE("without its lengths an element has the same margins of the same subjects") {
    const auto all_of = [](const heatmatch::Installation& installation,
                           std::optional<double> heated_mm) {
        Circuit circuit = circuit_in(installation, "storage-rod-1000-240", 2);
        circuit.bank.element.heated_length_mm = heated_mm;
        circuit.heat = heatmatch::bank_heat(circuit.heat->store, circuit.bank.element,
                                            circuit.bank.sheath, circuit.bank.alloy, 2);
        const auto point = heatmatch::heat_of(circuit, {.element_power_w = 100.0});
        std::vector<std::string> all;
        for (const auto& margins :
             {heatmatch::sheath_margins(circuit, point), heatmatch::store_margins(circuit, point),
              std::vector{heatmatch::survivor_sheath_margin(circuit, {})}}) {
            for (const Margin& margin : margins)
                all.push_back(margin.name + " of " + margin.subject);
        }
        return all;
    };
    CHECK(all_of(drum(), 700.0) == all_of(drum(), std::nullopt));
    CHECK(all_of(drum(), 700.0) == all_of(drum(), 5000.0));  // sticks out
}

// From memory, soil-warming practice: up to 30 W a metre a damp bed stays damp.
TEST_CASE("a bed that was meant damp is a warning where only its dry state is too hot") {
    const double watts = 40.0;  // 27.6 W/m
    const Circuit probe = rods_in_sand(true, 500.0);
    const double damp_c = probe.heat->damp_at(watts)->sheath_c;
    const double dry_c = probe.heat->at(watts).sheath_c;
    const double between_c = 0.5 * (damp_c + dry_c);
    const Margin damp =
        margin_of(sheath_margins_at(rods_in_sand(true, between_c), watts), "sheath temperature");
    CHECK(damp.severity == Severity::warning);
    CHECK(*damp.value == damp_c);
    CHECK(*damp.value_high == dry_c);
    CHECK(contains(damp.sentence(), "keep the fill damp"));
    check_sentence(damp);
    CHECK(
        margin_of(sheath_margins_at(rods_in_sand(true, dry_c + 100.0), watts), "sheath temperature")
            .severity == Severity::none);
    for (const auto& [moist, limit_c, element_w] :
         {std::tuple(false, between_c, watts), std::tuple(true, damp_c - 5.0, watts),
          std::tuple(true, between_c, 60.0)}) {
        CHECK(margin_of(sheath_margins_at(rods_in_sand(moist, limit_c), element_w),
                        "sheath temperature")
                  .severity == Severity::danger);
    }
    const double later_c = 0.5 * (probe.heat->damp_at(watts)->stagnation_sheath_c +
                                  probe.heat->at(watts).stagnation_sheath_c);
    const Margin later =
        margin_of(sheath_margins_at(rods_in_sand(true, later_c), watts), "stagnation");
    CHECK(later.severity == Severity::warning);
    CHECK(contains(later.sentence(), "once it has dried"));
    CHECK(
        margin_of(sheath_margins_at(rods_in_sand(false, later_c), watts), "stagnation").severity ==
        Severity::danger);
    CHECK(*rods_in_sand(true, later_c).heat->largest_element_w(true) == doctest::Approx(43.5));
}

TEST_CASE("a store of water has no sentence about sand") {
    heatmatch::Installation installation = drum();
    installation.store->vented = true;
    const Circuit water = circuit_in(installation, "immersion-1000-230", 1, "water");
    for (const Margin& margin : sheath_margins_at(water, 500.0)) {
        CAPTURE(margin.sentence());
        for (const char* word : {"sand", "fill", "bed", "brick", "grain"}) {
            if (margin.name == "settled sand") continue;
            CHECK_FALSE(contains(margin.sentence(), word));
        }
    }
    CHECK(contains(margin_of(sheath_margins_at(water, 500.0), "settled sand").sentence(),
                   "A liquid does not"));
}
