#include "long_run.hpp"
#include "operation_bench.hpp"
#include "random_yard.hpp"
#include "store_bench.hpp"

#include <cmath>
#include <utility>

#include <doctest/doctest.h>

#include "heatmatch/match/circuit/opens.hpp"
#include "heatmatch/match/margins/run_margins.hpp"
#include "heatmatch/match/margins/sheath_margins.hpp"
#include "heatmatch/match/margins/store_margins.hpp"
#include "heatmatch/match/margins/tail_margins.hpp"
#include "heatmatch/operation/days/stagnation.hpp"

// Errors of a trial of planted errors (mutants/trial.py) that no other test found.

using heatmatch::Circuit;
using heatmatch::HeatPoint;
using heatmatch::Margin;
using heatmatch::Severity;

namespace {

/// One rod in a narrow drum with an insulated wall and a bare lid: the lid is hotter than the wall.
Circuit rod_under_a_bare_lid() {
    heatmatch::Installation installation = drum(0.40, 0.735);
    installation.store->side_u_w_m2k = 0.3;
    installation.store->top_u_w_m2k = 30.0;
    installation.store->combustible_distance_mm = 0.0;
    return circuit_in(installation, "storage-rod-1000-240", 1);
}

/// The demo with a thermostat and a limit, each driving a contactor of its own.
heatmatch::Installation with_two_contactors(double thermostat_c, double limit_c) {
    heatmatch::Installation installation = demo();
    const auto contactor = [](const char* part) {
        return heatmatch::Device{
            .part = part, .run = "home run", .duty = heatmatch::Duty::breaks_dc};
    };
    const auto disc = [](const char* part, double set_c, const char* drives) {
        return heatmatch::Device{
            .part = part, .duty = heatmatch::Duty::senses_only, .set_c = set_c, .drives = {drives}};
    };
    installation.devices = {
        contactor("dc-contactor-sealed-450-v"), contactor("dc-contactor-open-150-v"),
        disc("capillary-thermostat-90", thermostat_c, "dc-contactor-sealed-450-v"),
        disc("limit-controller-thermocouple", limit_c, "dc-contactor-open-150-v")};
    return installation;
}

}  // namespace

// Source: the wire's own temperature along the run, which test_hot_tail.cpp checks against finite
// differences: the limit is met at the distance told, hotter nearer, cooler farther.
TEST_CASE("the distance from which a wire is suitable counts from the terminal") {
    heatmatch::Installation installation = drum();
    installation.store->terminals = heatmatch::StoreTerminals::through_wall;
    Circuit circuit = circuit_in(installation, "storage-rod-1000-240", 2);
    circuit.runs = {bench_run("thhn-14-awg", 30.0)};
    circuit.runs.front().run.carries = heatmatch::Carried::bank;
    const heatmatch::Extremes extremes{.element_power_w = 1000.0};
    const auto point = heatmatch::heat_of(circuit, extremes);
    const Margin margin = margin_of(heatmatch::tail_margins(circuit, cold_site, extremes, point),
                                    "hot tail insulation");
    const auto along = heatmatch::tail_of(circuit, extremes, point);
    REQUIRE(along);
    const std::string sentence = margin.sentence();
    CAPTURE(sentence);
    const std::size_t end = sentence.find(" cm beyond the terminal.");
    REQUIRE(end != std::string::npos);
    const double told_m = std::stod(sentence.substr(sentence.rfind(' ', end - 1))) / 100.0;
    CHECK(told_m > 0.0);
    CHECK(along->wire_c(0.9 * told_m) > *margin.limit);
    CHECK(along->wire_c(1.1 * told_m) < *margin.limit);
}

// Source: the definition: whichever of wall and lid is hotter lights wood and burns a hand.
TEST_CASE("wood and hands are assessed at the hotter of lid and wall") {
    const Circuit circuit = rod_under_a_bare_lid();
    const HeatPoint point = circuit.heat->at(300.0);
    REQUIRE(point.lid_c > point.wall_c + 1.0);
    const auto margins = heatmatch::store_margins(circuit, point);
    CHECK(*margin_of(margins, "wall and lid").value == point.lid_c);
    CHECK(*margin_of(margins, "touch temperature").value == point.lid_c);
}

// Source: the definition: conductivity is known within a band, and a surface is judged at whichever
// of it makes that surface hottest, also between its ends.
TEST_CASE("wall and lid are as hot as at the worst conductivity of the fill") {
    using FacePlace = double heatmatch::BedTemperatures::*;
    using FaceJudged = double HeatPoint::*;
    constexpr std::pair<FacePlace, FaceJudged> places[] = {
        {&heatmatch::BedTemperatures::wall_c, &HeatPoint::wall_c},
        {&heatmatch::BedTemperatures::lid_c, &HeatPoint::lid_c},
        {&heatmatch::BedTemperatures::floor_c, &HeatPoint::floor_c}};
    int lid_at_low = 0;
    int wall_at_high = 0;
    int between = 0;
    for (std::uint64_t seed = 0; seed < 40; ++seed) {
        CAPTURE(seed);
        Dice dice(6000 + seed);
        heatmatch::Installation yard = random_yard(dice);
        yard.store->moist = false;
        const auto candidate = heatmatch::assess({}, yard);
        const heatmatch::BankHeat& heat = *candidate.circuit.heat;
        if (!heat.known() || heat.liquid) continue;
        const double element_w = dice.between(20.0, 400.0);
        const HeatPoint point = heat.at(element_w);
        const double power_w = element_w * heat.elements;
        heatmatch::Medium medium = heat.store->medium;
        const double first = medium.k20_low_w_mk.value();
        const double last = medium.k20_high_w_mk.value();
        constexpr int steps = 8;
        for (const auto& [place, judged] : places) {
            std::vector<double> swept_c;
            for (int i = 0; i <= steps; ++i) {
                heatmatch::BedCharge charge = heat.careful;
                medium.k20_low_w_mk = first * std::pow(last / first, double(i) / steps);
                charge.fill = heatmatch::bed_fill(medium, heatmatch::ConductivityEnd::low);
                swept_c.push_back(heatmatch::bed_temperatures(charge, power_w).*place);
            }
            const auto hottest = std::max_element(swept_c.begin(), swept_c.end());
            const double rise_k = *hottest - heat.careful.air_c;
            CHECK(point.*judged >= *hottest - 0.01 * rise_k);
            CHECK(point.*judged <= *hottest + 0.03 * rise_k);
            const bool lid = place == &heatmatch::BedTemperatures::lid_c;
            lid_at_low += lid && hottest == swept_c.begin() ? 1 : 0;
            wall_at_high += !lid && hottest == swept_c.end() - 1 ? 1 : 0;
            between += hottest != swept_c.begin() && hottest != swept_c.end() - 1 ? 1 : 0;
        }
        CHECK(point.stagnation_wall_c >=
              std::max(heatmatch::bed_temperatures(heat.stagnant, power_w).wall_c,
                       heatmatch::bed_temperatures(heat.stagnant_out, power_w).wall_c));
    }
    CHECK(lid_at_low > 0);
    CHECK(wall_at_high > 0);
    CHECK(between > 0);
}

// Source: the definition: 10 K above the warmest month's daily high (27 °C in the demo) within a
// space, 40 °C without weather; the air of the season is another one.
TEST_CASE("a fortnight of stagnation is judged in the air of high summer") {
    heatmatch::Installation installation = drum();
    installation.store->air_c = 5.0;
    CHECK(circuit_in(installation, "storage-rod-1000-240", 2).heat->stagnant.air_c == 37.0);
    CHECK(circuit_in(installation, "storage-rod-1000-240", 2).heat->stagnant_out.air_c == 37.0);
    CHECK(circuit_in(installation, "storage-rod-1000-240", 2).heat->careful.air_c == 5.0);
    installation.weather.reset();
    CHECK(circuit_in(installation, "storage-rod-1000-240", 2).heat->stagnant.air_c == 40.0);
    const auto still_at = [](double air_c) {
        heatmatch::Installation changed = demo();
        changed.store->air_c = air_c;
        return highest(heatmatch::simulate_stagnation(standing(changed)).run.series.wall_c);
    };
    if (!in_a_slow_build()) CHECK(still_at(5.0) == doctest::Approx(still_at(30.0)).epsilon(1e-9));
    const auto water = circuit_in(installation, "immersion-4500-240", 1, "water");
    installation.store->air_c = 35.0;
    const auto warm = circuit_in(installation, "immersion-4500-240", 1, "water");
    CHECK(water.heat->at(30.0).stagnation_sheath_c ==
          doctest::Approx(warm.heat->at(30.0).stagnation_sheath_c).epsilon(1e-9));
}

// Source: NEC 2020 (US) 690.8(A): 1.25 times the short-circuit current; 1.25 * 8.66 A is 10.825 A.
TEST_CASE("a joint is rated for 1.25 times the short-circuit current") {
    Circuit circuit = bench_circuit("silicon-60-cell-245", {1, 1}, "tubular-1000-120", {1, 1});
    circuit.runs = {bench_run("thhn-12-awg", 30.0)};
    circuit.runs.front().connector = heatmatch::find_connector(starter(), "lever-splice");
    const auto rated = [&](double amperes) {
        circuit.runs.front().connector->current_rating_a = amperes;
        return margin_of(heatmatch::run_margins(circuit, cold_site), "joint current");
    };
    CHECK(*rated(10.0).value == doctest::Approx(10.825));
    CHECK(rated(10.8).severity == Severity::warning);
    CHECK(rated(10.9).severity == Severity::caution);
    CHECK(rated(20.0).severity == Severity::none);
}

// Source: the same, which counts full sun however bright the site may be, and a string's own
// current in a string's run: 1.25 * 8.66 A, and three times that behind the joint.
TEST_CASE("a joint carries the current of its own run, at the irradiance of the code") {
    Circuit circuit = bench_circuit("silicon-60-cell-245", {1, 3}, "tubular-1000-120", {1, 2});
    circuit.runs = {bench_run("thhn-12-awg", 30.0)};
    circuit.runs.front().connector = heatmatch::find_connector(starter(), "lever-splice");
    heatmatch::Site brighter = cold_site;
    brighter.bright_irradiance_w_m2 = 1300.0;
    const auto carried = [&](heatmatch::Carried carries) {
        circuit.runs.front().run.carries = carries;
        return *margin_of(heatmatch::run_margins(circuit, brighter), "joint current").value;
    };
    CHECK(carried(heatmatch::Carried::string) == doctest::Approx(10.825));
    CHECK(carried(heatmatch::Carried::array) == doctest::Approx(32.475));
    CHECK(carried(heatmatch::Carried::bank) == doctest::Approx(32.475));
    CHECK(carried(heatmatch::Carried::branch) == doctest::Approx(16.2375));
}

// Source: IEC 60947-3: the pair holds for the contacts in series that it names. 86.8 V and 10.8 A.
TEST_CASE("a pair for two poles in series does not apply to one") {
    Circuit circuit = bench_circuit("silicon-60-cell-245", {2, 1}, "tubular-1000-120", {1, 1});
    circuit.runs = {bench_run("thhn-12-awg", 30.0)};
    heatmatch::PlacedDevice placed = bench_device("pv-isolator-4-pole", "breaks dc", 1);
    placed.control.dc_ratings = {{.v_dc = 500.0, .a_dc = 32.0, .poles = 2},
                                 {.v_dc = 60.0, .a_dc = 32.0, .poles = 1}};
    const heatmatch::OpeningSite grounded{.floating = false};
    const auto by_hand = [&] {
        return opens(circuit, placed, heatmatch::Occasion::by_hand, grounded);
    };
    CHECK(by_hand().answer == heatmatch::Answer::no);
    CHECK(by_hand().rated_v == 60.0);
    CHECK_FALSE(by_hand().rated_a);
    placed.device.poles_used = 2;
    CHECK(by_hand().answer == heatmatch::Answer::yes);
    CHECK(by_hand().rated_v == 500.0);
}

// Source: arithmetic: watts of one element over its own heated length, in cm and in inches.
TEST_CASE(
    "the load of a sheath is given per length in either unit set, and for the hours of a "
    "day") {
    heatmatch::Installation installation = drum();
    installation.store->charge_hours = 4.5;
    const Circuit circuit = circuit_in(installation, "storage-rod-1000-240", 2);
    const double heated_cm = circuit.heat->heated_length_m * 100.0 / 2.0;
    const double watts = 2.0 * heated_cm;
    const Margin margin = margin_of(
        heatmatch::sheath_margins(circuit, heatmatch::heat_of(circuit, {.element_power_w = watts})),
        "sheath temperature");
    CHECK(contains(margin.sentence(), "At 2 W/cm for 4.5 h a day"));
    CHECK(contains(margin.sentence(heatmatch::UnitSystem::us), "At 5.08 W/in for 4.5 h a day"));
}

// Common practice, no source: the limit is there for the day on which the thermostat does not open.
TEST_CASE("a welded thermostat leaves a limit with contacts of its own") {
    const heatmatch::DayWeather weather = even_days(3, 900.0, 15.0);
    const double hot_c = highest(heatmatch::simulate_day(standing(), weather).series.wall_c);
    const double set_c = 0.6 * hot_c + 0.4 * 15.0;
    const auto candidate = standing(with_two_contactors(set_c - 5.0, set_c));
    const auto run = heatmatch::simulate_day(
        candidate, weather,
        {.warm_up_days = 0, .switches = heatmatch::SwitchCase::thermostat_welded});
    REQUIRE(run.events.size() == 2);
    CHECK(run.events.front().what == heatmatch::SwitchAction::cannot_open);
    CHECK(run.events.back().device == "limit-controller-thermocouple");
    CHECK(run.events.back().what == heatmatch::SwitchAction::opens);
    CHECK(run.series.power_w.back() == 0.0);
}
