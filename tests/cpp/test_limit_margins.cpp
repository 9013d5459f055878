#include "store_bench.hpp"

#include <doctest/doctest.h>

#include "heatmatch/match/margins/limit_margins.hpp"
#include "heatmatch/match/margins/sheath_margins.hpp"

using heatmatch::Answer;
using heatmatch::Circuit;
using heatmatch::limit_in_time;
using heatmatch::Margin;
using heatmatch::PlacedDevice;
using heatmatch::SensedPlace;
using heatmatch::Severity;

namespace {

/// A drum lagged so well that its bed warms from day to day and its wall stays cool.
Circuit lagged() {
    heatmatch::Installation installation = drum();
    installation.store->side_u_w_m2k = 0.4;
    installation.store->top_u_w_m2k = 0.4;
    installation.store->bottom_u_w_m2k = 0.4;
    Circuit circuit = circuit_in(installation, "storage-rod-1000-240", 2);
    circuit.runs = {bench_run("thhn-12-awg", 30.0)};
    return circuit;
}

/// Set to 100 °C in the bed, opening a contactor.
PlacedDevice bed_limit() {
    PlacedDevice limit = bench_device("limit-controller-thermocouple", "senses only", 1, "");
    limit.device.set_c = 100.0;
    limit.device.set_tolerance_k = 5.0;
    limit.device.senses = SensedPlace::bed;
    limit.device.drives = {"dc-contactor-sealed-450-v"};
    return limit;
}

Circuit limited(PlacedDevice limit) {
    Circuit circuit = lagged();
    circuit.devices = {std::move(limit), bench_device("dc-contactor-sealed-450-v", "breaks dc")};
    return circuit;
}

std::vector<Margin> limit_margins_at(const Circuit& circuit, double element_w) {
    const auto point = heatmatch::heat_of(circuit, {.element_power_w = element_w});
    return limit_margins(circuit, point);
}

/// Between what the sheath stands for days and what it stands for a fortnight.
double between_w(const Circuit& circuit) {
    return 0.5 * (*circuit.heat->largest_element_w(false) + *circuit.heat->largest_element_w(true));
}

}  // namespace

TEST_CASE(
    "a limit acts in time where its place reaches the set point before any part exceeds "
    "its limit") {
    const Circuit circuit = limited(bed_limit());
    const double watts = between_w(circuit);
    const auto found = limit_in_time(circuit, circuit.devices.front(), watts);
    CHECK(found.acts == Answer::yes);
    CHECK(found.day >= 1);
    CHECK(found.day <= 3);
    CHECK(limit_counts(circuit, watts));
    const Margin margin = margin_of(limit_margins_at(circuit, watts), "limit acts in time");
    CHECK(margin.severity == Severity::none);
    check_sentence(margin);
}

TEST_CASE("more power, a higher set point and a wider tolerance never make a limit act sooner") {
    const Circuit circuit = limited(bed_limit());
    const double watts = between_w(circuit);
    bool acted = true;
    for (double set_c = 60.0; set_c < 900.0; set_c += 60.0) {
        PlacedDevice limit = bed_limit();
        limit.device.set_c = set_c;
        CAPTURE(set_c);
        const bool acts = limit_in_time(circuit, limit, watts).acts == Answer::yes;
        CHECK((acted || !acts));
        acted = acts;
        if (!acts) continue;
        limit.device.set_tolerance_k.reset();  // counts as 10 K
        const int careful = limit_in_time(circuit, limit, watts).day;
        limit.device.set_tolerance_k = 0.0;
        CHECK(limit_in_time(circuit, limit, watts).day <= careful);
    }
    CHECK_FALSE(acted);
    CHECK_FALSE(limit_counts(circuit, 20.0 * watts));
}

TEST_CASE("a limit that cannot be determined, or acts late, does not count, with a reason") {
    const auto said = [](const PlacedDevice& limit) {
        const Circuit circuit = limited(limit);
        const double watts = between_w(circuit);
        CHECK_FALSE(limit_counts(circuit, watts));
        const Margin margin = margin_of(limit_margins_at(circuit, watts), "limit acts in time");
        CHECK(margin.severity == Severity::warning);
        check_sentence(margin);
        return margin.sentence();
    };
    PlacedDevice limit = bed_limit();
    limit.device.set_c = 700.0;
    CHECK(contains(said(limit), "opens too late"));
    CHECK(contains(said(limit), "the sheath is above its limit"));
    limit = bed_limit();
    limit.device.senses = SensedPlace::space;
    CHECK(contains(said(limit), "cannot be determined"));
    CHECK_FALSE(contains(said(limit), "too late"));
    limit = bed_limit();
    limit.device.set_c.reset();
    CHECK(contains(said(limit), "set point is not stated"));
}

TEST_CASE("where no part exceeds its limit, the limit is not needed") {
    PlacedDevice limit = bed_limit();
    limit.device.set_c = 600.0;
    const Circuit circuit = limited(limit);
    const auto found = limit_in_time(circuit, limit, 5.0);
    CHECK_FALSE(found.called_for);
    CHECK_FALSE(limit_counts(circuit, 5.0));  // it softens nothing either
    CHECK(margin_of(limit_margins_at(circuit, 5.0), "limit acts in time").severity ==
          Severity::none);
}

// Source: a limit of a water heater opens below boiling; 93 °C is from memory.
TEST_CASE("in water a limit senses the water and is set to 93 °C at most") {
    Circuit circuit = circuit_in(drum(), "immersion-4500-240", 1, "water");
    circuit.runs = {bench_run("thhn-12-awg", 30.0)};
    PlacedDevice limit = bed_limit();
    limit.device.senses = SensedPlace::wall;
    limit.device.set_c = 60.0;
    CHECK(contains(limit_in_time(circuit, limit, 800.0).first, "sense the water"));
    limit.device.senses = SensedPlace::bed;
    limit.device.set_c = 94.0;
    CHECK(contains(limit_in_time(circuit, limit, 800.0).first, "93 °C or less"));
    CHECK(limit_in_time(circuit, limit, 800.0).acts == Answer::no);
}

TEST_CASE("without supply or probe the circuit opens, or that is reported") {
    const auto supply = [](const PlacedDevice& limit) {
        const Margin margin = margin_of(limit_margins_at(limited(limit), 20.0), "limit supply");
        check_sentence(margin);
        return margin;
    };
    PlacedDevice limit = bed_limit();
    CHECK(supply(limit).severity == Severity::warning);
    CHECK(supply(limit).missing ==
          std::vector<std::string>{"device.opens_on_supply_loss", "device.opens_on_probe_break"});
    limit.device.opens_on_supply_loss = true;
    CHECK(supply(limit).severity == Severity::warning);
    limit.device.opens_on_probe_break = false;
    CHECK(supply(limit).severity == Severity::warning);
    limit.device.opens_on_probe_break = true;
    CHECK(supply(limit).severity == Severity::none);
    CHECK(supply(limit).missing.empty());
    limit.device.opens_on_supply_loss = false;
    CHECK(supply(limit).severity == Severity::warning);
}

TEST_CASE("a limit that opens nothing stops no stagnation and keeps no supply") {
    PlacedDevice limit = bed_limit();
    limit.device.opens_on_supply_loss = true;
    limit.device.opens_on_probe_break = true;
    const auto severity = [](const PlacedDevice& judged, const char* name) {
        const Circuit circuit = limited(judged);
        const Margin margin = margin_of(limit_margins_at(circuit, between_w(circuit)), name);
        check_sentence(margin);
        return margin.severity;
    };
    CHECK(severity(limit, "limit acts in time") == Severity::none);
    CHECK(severity(limit, "limit supply") == Severity::none);
    PlacedDevice cold = limit;  // below what it is made for: it would act on the first day
    cold.control.sense_low_c = 120.0;
    PlacedDevice untold = limit;
    untold.device.drives.clear();
    for (const PlacedDevice& judged : {cold, untold}) {
        CHECK(severity(judged, "limit acts in time") == Severity::warning);
        CHECK(severity(judged, "limit supply") == Severity::warning);
    }
    // More amperes in bright sun than the contactor breaks.
    Circuit circuit = limited(limit);
    circuit.devices.back().control.dc_ratings.front().a_dc =
        1.3 * circuit.short_circuit_current_a();
    const double watts = between_w(circuit);
    CHECK(limit_counts(circuit, watts));
    CHECK_FALSE(limit_counts(circuit, watts, {.irradiance_w_m2 = 1200.0}));
    const auto point = heatmatch::heat_of(circuit, {.element_power_w = watts});
    CHECK(
        margin_of(limit_margins(circuit, point, {.irradiance_w_m2 = 1200.0}), "limit acts in time")
            .severity == Severity::warning);
}

TEST_CASE("the margins are the same whatever is stated") {
    const auto names = [](const PlacedDevice& limit) {
        std::vector<std::string> found;
        for (const Margin& margin : limit_margins_at(limited(limit), 50.0)) {
            found.push_back(margin.name + ' ' + margin.subject);
            CHECK(!margin.source.empty());
        }
        return found;
    };
    PlacedDevice untold = bed_limit();
    untold.device.drives.clear();
    untold.device.set_c.reset();
    untold.device.set_tolerance_k.reset();
    untold.device.senses.reset();
    CHECK(names(untold) == names(bed_limit()));
}
