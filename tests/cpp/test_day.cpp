#include "operation_bench.hpp"
#include "refusal.hpp"
#include "within.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include <doctest/doctest.h>

using namespace heatmatch;

namespace {

/// The demo with its thermostat and its limit set.
Installation with_thermostat(double set_c) {
    Installation installation = demo();
    for (Device& device : installation.devices) {
        if (device.part != "snap-disc-fixed") continue;
        device.part = "capillary-thermostat-90";  // a disc can be set to 40 °C at least
        device.set_c = set_c;
    }
    return installation;
}

}  // namespace

TEST_CASE("every watt-hour of some days is accounted for") {
    const Candidate candidate = standing();
    for (const auto end : {ConductivityEnd::low, ConductivityEnd::typical, ConductivityEnd::high}) {
        DayOptions options = january_days();
        options.conductivity = end;
        const DayRun run = simulate_day(candidate, demo_year(), options);
        CHECK(run.energy.unbalanced_share < 1e-6);
        CHECK(run.energy.delivered_kwh > 0.0);
        CHECK(run.energy.delivered_kwh < run.energy.available_kwh);
        CHECK(run.series.hours.size() == 3 * 288);
        CHECK(run.series.hours.back() == doctest::Approx(72.0));
    }
}

TEST_CASE("the heat of even sun is that of its operating point") {
    // Against deliver() at the ohms it takes; what differs is the ohms at the coils' temperature.
    const Candidate candidate = standing();
    const DayWeather weather = even_days(2, 600.0, 0.0);
    const DayRun run = simulate_day(candidate, weather);
    const double noct = *candidate.circuit.panel.panel.noct_c;
    const Delivered at = deliver(candidate.circuit, 600.0, weather.cell_temperature_c(12, noct));
    CHECK(within(run.energy.delivered_kwh, at.power_w * 16.0 / 1000.0, 0.02));
    CHECK(within(run.energy.available_kwh, at.maximum_power_w * 16.0 / 1000.0, 1e-9));
    CHECK(within(highest(run.series.bank_a), at.current_a, 0.02));
}

TEST_CASE("a space that stores nothing is lifted by all that reaches it") {
    // Sum over the balance: mean lift times (sum UA + 0.34 n V) is the heat that reached it.
    const Candidate candidate = standing();
    const DayRun run = simulate_day(candidate, demo_year(), january_days());
    double lift_kh = 0.0;
    for (std::size_t i = 0; i < run.series.hours.size(); ++i) {
        lift_kh += (run.series.space_c[i] - run.series.space_unheated_c[i]) / 12.0;
    }
    CHECK(within(lift_kh * candidate.space->loss_w_k() / 1000.0, run.energy.to_space_kwh, 1e-6));
    CHECK(run.series.space_unheated_c.front() == run.series.outside_c.front());
}

TEST_CASE("shorter steps change little" * doctest::test_suite("numerical")) {
    const Candidate candidate = standing();
    DayOptions coarse = january_days();
    DayOptions fine = january_days();
    fine.electrical_step_s = 15.0;
    fine.thermal_step_s = 75.0;
    const DayRun one = simulate_day(candidate, demo_year(), coarse);
    const DayRun two = simulate_day(candidate, demo_year(), fine);
    CHECK(within(one.energy.delivered_kwh, two.energy.delivered_kwh, 1e-3));
    CHECK(within(one.energy.to_space_kwh, two.energy.to_space_kwh, 5e-3));
    CHECK(within(highest(one.series.sheath_c), highest(two.series.sheath_c), 0.01));
}

TEST_CASE("a thermostat keeps the wall down, and one that is welded does not") {
    const DayWeather weather = even_days(3, 900.0, 15.0);
    const DayRun free = simulate_day(standing(), weather, {.warm_up_days = 0});
    const double set_c = 0.7 * highest(free.series.wall_c) + 0.3 * 15.0;
    const Candidate candidate = standing(with_thermostat(set_c));
    const DayRun kept = simulate_day(candidate, weather, {.warm_up_days = 0});
    const DayRun welded = simulate_day(
        candidate, weather, {.warm_up_days = 0, .switches = SwitchCase::thermostat_welded});
    CHECK(highest(kept.series.wall_c) < highest(free.series.wall_c));
    CHECK(kept.energy.delivered_kwh < free.energy.delivered_kwh);
    REQUIRE(!kept.events.empty());
    CHECK(kept.events.front().what == heatmatch::SwitchAction::opens);
    CHECK(kept.energy.unbalanced_share < 1e-6);
    CHECK(highest(welded.series.wall_c) == doctest::Approx(highest(free.series.wall_c)));
    REQUIRE(welded.events.size() == 1);
    CHECK(welded.events.front().what == heatmatch::SwitchAction::cannot_open);
}

TEST_CASE("a limit stays open after it has opened, unless the breaking contacts are welded") {
    const DayWeather weather = even_days(3, 900.0, 15.0);
    Installation installation = demo();
    const double hot_c = highest(simulate_day(standing(), weather).series.wall_c);
    for (Device& device : installation.devices) {
        if (device.part != "snap-disc-manual-reset") continue;
        device.part = "limit-controller-thermocouple";  // a disc can be set to 70 °C at least
        device.set_c = 0.6 * hot_c + 0.4 * 15.0;
    }
    const Candidate candidate = standing(installation);
    const DayOptions cold{.warm_up_days = 0};
    const DayRun run = simulate_day(candidate, weather, cold);
    REQUIRE(run.events.size() == 1);
    CHECK(run.events.front().what == heatmatch::SwitchAction::opens);
    CHECK(run.series.power_w.back() == 0.0);
    CHECK(*std::max_element(run.series.power_w.end() - 24 * 12, run.series.power_w.end()) == 0.0);
    DayOptions welded = cold;
    welded.switches = SwitchCase::breaker_welded;
    const DayRun on = simulate_day(candidate, weather, welded);
    CHECK(on.events.front().what == heatmatch::SwitchAction::cannot_open);
    CHECK(on.energy.delivered_kwh > run.energy.delivered_kwh);
}

TEST_CASE("events before the first day are reported") {
    const DayWeather weather = even_days(3, 900.0, 15.0);
    const Candidate candidate = standing(with_thermostat(20.0));
    const DayRun run = simulate_day(candidate, weather);
    CHECK(
        std::any_of(run.remarks.begin(), run.remarks.end(), [](const heatmatch::Sentence& remark) {
            return remark.text().find("during the warm-up days") != std::string::npos;
        }));
}

TEST_CASE("inside the space a fan or insulation gives the same heat, sooner or later" *
          doctest::test_suite("numerical")) {
    const Candidate bare = standing();
    DayOptions options = january_days();
    options.warm_up_days = 14;
    const DayRun still = simulate_day(bare, demo_year(), options);
    options.extraction = {.w_k = 10.0};
    const DayRun blown = simulate_day(bare, demo_year(), options);
    Installation wrapped = demo();
    wrapped.store->side_u_w_m2k = 0.5;
    wrapped.store->top_u_w_m2k = 0.5;
    wrapped.store->bottom_u_w_m2k = 0.5;
    options.extraction = {};
    const DayRun slow = simulate_day(standing(wrapped), demo_year(), options);
    for (const DayRun* run : {&still, &blown, &slow}) {
        CHECK(within(run->energy.to_space_kwh + run->energy.stored_kwh, run->energy.delivered_kwh,
                     1e-6));
        CHECK(run->energy.outside_kwh == doctest::Approx(0.0));
    }
    CHECK(within(blown.energy.delivered_kwh, still.energy.delivered_kwh, 0.01));
    CHECK(highest(blown.series.bed_mean_c) < highest(still.series.bed_mean_c));
    CHECK(highest(blown.series.released_w) > highest(still.series.released_w));
    CHECK(highest(slow.series.released_w) < highest(still.series.released_w));
}

TEST_CASE("outside the space insulation keeps the heat that the fan extracts" *
          doctest::test_suite("numerical")) {
    Installation outside = demo();
    outside.store->stands = heatmatch::StorePlace::outside;
    DayOptions options{.span = {.month = 1, .days = 7}};
    options.extraction = {.w_k = 2.0, .from_hour = 17.0, .until_hour = 7.0};
    const DayRun bare = simulate_day(standing(outside), demo_year(), options);
    outside.store->side_u_w_m2k = 0.3;
    outside.store->top_u_w_m2k = 0.3;
    outside.store->bottom_u_w_m2k = 0.3;
    const DayRun wrapped = simulate_day(standing(outside), demo_year(), options);
    CHECK(bare.energy.outside_kwh > 0.0);
    CHECK(wrapped.energy.to_space_kwh > 1.5 * bare.energy.to_space_kwh);
    CHECK(bare.energy.unbalanced_share < 1e-6);
    CHECK(wrapped.energy.unbalanced_share < 1e-6);
    options.extraction = {};
    CHECK(simulate_day(standing(outside), demo_year(), options).energy.to_space_kwh == 0.0);
}

TEST_CASE("water stores the same heat at a lower temperature") {
    Installation water = demo();
    water.store->medium = "water";
    const DayRun wet = simulate_day(standing(water), demo_year(), january_days());
    const DayRun dry = simulate_day(standing(), demo_year(), january_days());
    CHECK(wet.bed_model == heatmatch::BedModel::water);
    CHECK(within(wet.energy.delivered_kwh, dry.energy.delivered_kwh, 0.03));
    CHECK(highest(wet.series.sheath_c) < 0.5 * highest(dry.series.sheath_c));
    CHECK(wet.energy.unbalanced_share < 1e-6);
    const auto freezes = [](const DayRun& run) {
        return std::any_of(run.remarks.begin(), run.remarks.end(),
                           [](const heatmatch::Sentence& remark) {
                               return remark.text().find("below 0 °C") != std::string::npos;
                           });
    };
    CHECK(freezes(wet));
    CHECK_FALSE(freezes(dry));
    CHECK_FALSE(
        freezes(simulate_day(standing(water), demo_year(), {.span = {.month = 7, .days = 3}})));
}

TEST_CASE("with thermal mass the space lags, and holds the same heat in the end" *
          doctest::test_suite("numerical")) {
    Installation heavy = demo();
    heavy.space->heat_capacity_kwh_k = 2.0;
    const DayRun light = simulate_day(standing(), demo_year(), january_days());
    const DayRun slow = simulate_day(standing(heavy), demo_year(), january_days());
    const auto swing = [](const std::vector<double>& list) {
        return highest(list) - *std::min_element(list.begin(), list.end());
    };
    CHECK(swing(slow.series.space_c) < swing(light.series.space_c));
    CHECK(swing(slow.series.space_unheated_c) < swing(light.series.space_unheated_c));
    CHECK(within(slow.energy.to_space_kwh, light.energy.to_space_kwh, 0.06));
}

TEST_CASE("days that cannot be simulated are refused by name") {
    const Candidate candidate = standing();
    const DayWeather weather = even_days(1, 500.0, 0.0);
    const auto with = [&](DayOptions options) {
        return refusal_of([&] { (void)simulate_day(candidate, weather, options); });
    };
    CHECK(holds(with({.electrical_step_s = 0.0}), "electrical_step_s"));
    CHECK(holds(with({.thermal_step_s = 1e6}), "thermal_step_s"));
    CHECK(holds(with({.warm_up_days = -1}), "warm_up_days"));
    CHECK(holds(with({.extraction = {.w_k = -1.0}}), "extraction.w_k"));
    CHECK(holds(with({.air_around_c = std::nan("")}), "air_around_c"));
    Candidate without = candidate;
    without.circuit.heat = nullptr;
    CHECK(holds(refusal_of([&] { (void)simulate_day(without, weather); }), "describe the store"));
    Installation tall = demo();
    tall.store->height_m = 0.1;
    tall.store->diameter_m = 0.1;
    const Candidate misfit = standing(tall);
    CHECK(holds(refusal_of([&] { (void)simulate_day(misfit, weather); }), "legs in the store"));
    CHECK(holds(refusal_of([&] { (void)simulate_day(candidate, DayWeather{}); }), "no rows"));
}

TEST_CASE("an installation without a space has a store in the outside air, with a remark") {
    Installation installation = demo();
    installation.space.reset();
    const DayRun run = simulate_day(standing(installation), demo_year(), january_days());
    CHECK_FALSE(run.heats_space);
    CHECK(run.energy.to_space_kwh == 0.0);
    CHECK(run.series.space_c == run.series.outside_c);
    CHECK(
        std::any_of(run.remarks.begin(), run.remarks.end(), [](const heatmatch::Sentence& remark) {
            return remark.text().find("The heat loss of the space is not known") !=
                   std::string::npos;
        }));
}
