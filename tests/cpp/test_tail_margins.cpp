#include "store_bench.hpp"

#include <doctest/doctest.h>

#include "heatmatch/match/margins/sheath_margins.hpp"
#include "heatmatch/match/margins/tail_margins.hpp"

using heatmatch::Circuit;
using heatmatch::Margin;
using heatmatch::Severity;

namespace {

std::vector<Margin> tail_margins_at(const Circuit& circuit, double element_w) {
    const heatmatch::Extremes extremes{.element_power_w = element_w};
    return heatmatch::tail_margins(circuit, cold_site, extremes,
                                   heatmatch::heat_of(circuit, extremes));
}

/// Two storage-heater rods in the drum, that wire on them, in air of 30 °C or in the bed.
Circuit circuit_with_tail(const heatmatch::Installation& installation, std::string_view wire,
                          std::string_view kind = "open air") {
    Circuit circuit = circuit_in(installation, "storage-rod-1000-240", 2);
    const auto air_c = kind == "bed" ? std::nullopt : std::optional(30.0);
    circuit.runs = {bench_run(wire, air_c, kind)};
    circuit.runs.front().run.carries = heatmatch::Carried::bank;
    return circuit;
}

}  // namespace

// Source: the conductor's temperature is that of conductor_temperature(), tested for itself.
TEST_CASE("without a store terminals are judged by the hottest run at the element") {
    Circuit circuit = bench_circuit("silicon-60-cell-245", {2, 1}, "tubular-1000-120", {1, 1});
    const auto terminal = [&] {
        return margin_of(heatmatch::tail_margins(circuit, cold_site, {}, std::nullopt),
                         "terminal temperature");
    };
    check_not_assessed(terminal(), "surroundings.air_c");
    circuit.runs = {bench_run("thhn-12-awg", 30.0), bench_run("silicone-14-awg", 120.0)};
    // Neither run reaches the element.
    check_not_assessed(terminal(), "surroundings.air_c");
    circuit.runs.back().run.carries = heatmatch::Carried::bank;
    const auto conductor = heatmatch::conductor_temperature(*circuit.runs.back().wire,
                                                            &*circuit.runs.back().insulation, 8.66,
                                                            circuit.runs.back().run.surroundings);
    check_judged(terminal(), Severity::none, conductor->conductor_c, 250.0, heatmatch::room_c);
    circuit.bank.element.terminal_limit_c = 105.0;
    CHECK(terminal().severity == Severity::danger);
    CHECK(*terminal().headroom < 0.0);
    circuit.bank.element.terminal_limit_c.reset();
    check_not_assessed(terminal(), "terminal_limit_c");
    for (const char* name :
         {"end seal", "hot tail insulation", "hot tail plating", "hot tail joint"}) {
        check_not_assessed(
            margin_of(heatmatch::tail_margins(circuit, cold_site, {}, std::nullopt), name),
            "store");
    }
}

// Common practice, no source: PVC at buried terminals melts; silicone lasts where the terminal
// stays under its limit.
TEST_CASE("ordinary wire melts at a buried terminal, and does outside the wall") {
    heatmatch::Installation buried = drum();
    buried.store->terminals = heatmatch::StoreTerminals::buried;
    const double watts = 200.0;
    const Margin pvc =
        margin_of(tail_margins_at(circuit_with_tail(buried, "thhn-14-awg", "bed"), watts),
                  "hot tail insulation");
    CHECK(pvc.severity == Severity::danger);
    CHECK(contains(pvc.sentence(), "be suitable"));
    check_sentence(pvc);
    heatmatch::Installation outside = drum();
    outside.store->terminals = heatmatch::StoreTerminals::through_wall;
    const Margin silicone =
        margin_of(tail_margins_at(circuit_with_tail(outside, "silicone-14-awg"), watts),
                  "hot tail insulation");
    CHECK(silicone.severity != Severity::danger);
    CHECK(*silicone.value < *pvc.value);
    const Margin further = margin_of(
        tail_margins_at(circuit_with_tail(outside, "thhn-14-awg"), 1000.0), "hot tail insulation");
    CHECK(contains(further.sentence(), " cm beyond the terminal."));
    CHECK(contains(further.sentence(heatmatch::UnitSystem::us), " in beyond the terminal."));
    check_sentence(further);
}

TEST_CASE("where nothing is stated the run at the element determines where its terminal is") {
    heatmatch::Installation installation = drum();
    installation.store->terminals.reset();
    const heatmatch::TailHeat in_bed =
        heatmatch::tail_heat(circuit_with_tail(installation, "silicone-14-awg", "bed"));
    CHECK(in_bed.tail.place == heatmatch::TerminalPlace::buried);
    const heatmatch::TailHeat in_air =
        heatmatch::tail_heat(circuit_with_tail(installation, "silicone-14-awg", "open air"));
    CHECK(in_air.tail.place == heatmatch::TerminalPlace::outside);
    CHECK_FALSE(in_air.assumed.empty());
}

TEST_CASE("air that is not stated around the end of an element is a caution, not good") {
    heatmatch::Installation installation = drum();
    installation.store->terminals = heatmatch::StoreTerminals::through_wall;
    Circuit circuit = circuit_with_tail(installation, "mica-glass-14-awg");
    const auto named = [&](const char* name) {
        return margin_of(tail_margins_at(circuit, 60.0), name);
    };
    CHECK(named("hot tail insulation").severity == Severity::none);
    const double headroom = *named("hot tail insulation").headroom;
    circuit.runs.front().run.surroundings.air_c.reset();
    for (const char* name : {"terminal temperature", "hot tail insulation"}) {
        CHECK(named(name).severity == Severity::caution);
        CHECK(named(name).said.text().find("not stated") != std::string::npos);
    }
    CHECK(*named("hot tail insulation").headroom == doctest::Approx(headroom).epsilon(0.1));
    // Assessed again, it is unchanged.
    circuit.bank.element.terminal_limit_c = 31.0;
    CHECK(named("terminal temperature").severity == Severity::danger);
}

TEST_CASE("the end of an element is hotter with more watts and a shorter cold length") {
    const heatmatch::Installation installation = drum();
    Circuit circuit = circuit_with_tail(installation, "silicone-14-awg");
    double before = 0.0;
    for (double watts = 20.0; watts < 800.0; watts *= 1.5) {
        const double now =
            *margin_of(tail_margins_at(circuit, watts), "terminal temperature").value;
        CHECK(now > before);
        before = now;
    }
    before = 1e9;
    for (double cold_mm = 30.0; cold_mm < 200.0; cold_mm += 20.0) {
        circuit.bank.element.cold_length_mm = cold_mm;
        const double now =
            *margin_of(tail_margins_at(circuit, 200.0), "terminal temperature").value;
        CHECK(now < before);
        before = now;
    }
}

TEST_CASE("plating and seals age: a warning; joints and terminals fail: a danger") {
    Circuit circuit = circuit_with_tail(drum(), "silicone-14-awg");
    circuit.bank.element.terminal_limit_c = 120.0;
    circuit.bank.element.cold_length_mm = 30.0;
    const std::vector<Margin> hot = tail_margins_at(circuit, 3000.0);
    CHECK(margin_of(hot, "end seal").severity == Severity::warning);
    CHECK(margin_of(hot, "hot tail plating").severity == Severity::warning);
    CHECK(margin_of(hot, "terminal temperature").severity == Severity::danger);
    check_not_assessed(margin_of(hot, "hot tail joint"), "connector");
    CHECK(margin_of(hot, "hot tail joint").value);
}

TEST_CASE("a tail without a wire, and elements that do not fit, are not assessed") {
    Circuit circuit = circuit_with_tail(drum(), "silicone-14-awg");
    circuit.runs.front().wire.reset();
    check_not_assessed(margin_of(tail_margins_at(circuit, 100.0), "end seal"), "wire");
    circuit.runs.clear();
    check_not_assessed(margin_of(tail_margins_at(circuit, 100.0), "end seal"), "runs");
    const Circuit misfit = circuit_with_tail(drum(0.3, 0.3), "silicone-14-awg");
    check_not_assessed(margin_of(tail_margins_at(misfit, 100.0), "end seal"),
                       "an element that fits");
}

// Common practice, no source: the head of a screw-in element is as warm as the tank it sits on.
TEST_CASE("terminals of an element made for a tank are as warm as the liquid") {
    heatmatch::Installation installation = drum();
    installation.store->terminals = heatmatch::StoreTerminals::through_wall;
    const auto tank = [&installation](const char* element) {
        Circuit circuit = circuit_in(installation, element, 1, "water");
        circuit.runs = {bench_run("silicone-14-awg", 20.0)};
        circuit.runs.front().run.carries = heatmatch::Carried::bank;
        return circuit;
    };
    const Circuit screwed = tank("immersion-1000-230");
    const double liquid_c = screwed.heat->at(400.0).bed_mean_c;
    const double terminal_c =
        *margin_of(tail_margins_at(screwed, 400.0), "terminal temperature").value;
    CHECK(terminal_c >= liquid_c);
    CHECK(terminal_c < liquid_c + 3.0);
    const auto by_sheath = [](const Circuit& circuit, double sheath_c) {
        return heatmatch::tail_at(heatmatch::tail_heat(circuit), circuit, 400.0, sheath_c)
            .terminal_c;
    };
    CHECK(by_sheath(screwed, 60.0) == by_sheath(screwed, 200.0));
    const Circuit rod = tank("storage-rod-1000-240");
    CHECK(by_sheath(rod, 60.0) < by_sheath(rod, 200.0));
    // Hotter air than the liquid counts.
    Circuit warm = screwed;
    warm.runs.front().run.surroundings.air_c = 90.0;
    CHECK(*margin_of(tail_margins_at(warm, 400.0), "terminal temperature").value > terminal_c);
}
