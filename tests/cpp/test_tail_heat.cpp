#include "store_bench.hpp"

#include <cmath>

#include <doctest/doctest.h>

#include "heatmatch/match/circuit/tail_heat.hpp"

using heatmatch::Circuit;

namespace {

Circuit with_runs(std::vector<std::pair<std::string, std::string>> carried) {
    Circuit circuit = circuit_in(drum(), "storage-rod-1000-240", 2);
    for (const auto& [name, carries] : carried) {
        circuit.runs.push_back(bench_run("silicone-14-awg", 40.0));
        circuit.runs.back().run.name = name;
        circuit.runs.back().run.carries =
            heatmatch::find_choice<heatmatch::Carried>(carries).value();
    }
    return circuit;
}

}  // namespace

TEST_CASE("the tail is the last run that carries the bank or a branch, else the last of all") {
    CHECK(heatmatch::tail_heat(with_runs({{"a", "array"}, {"b", "bank"}, {"c", "branch"}}))
              .run.run.name == "c");
    CHECK(heatmatch::tail_heat(with_runs({{"a", "bank"}, {"b", "array"}})).run.run.name == "a");
    CHECK(heatmatch::tail_heat(with_runs({{"a", "string"}, {"b", "array"}})).run.run.name == "b");
    CHECK(heatmatch::tail_heat(with_runs({})).missing == std::vector<std::string>{"runs"});
}

TEST_CASE("outside the wall the sheath beyond it is taken from the cold length") {
    Circuit circuit = with_runs({{"a", "bank"}});
    const heatmatch::TailHeat tail = heatmatch::tail_heat(circuit);
    // 90 mm of cold length: 60 in the bed and 30 beyond the wall.
    CHECK(tail.tail.cold_length_m == doctest::Approx(0.060));
    CHECK(tail.tail.beyond_m == doctest::Approx(0.030));
    CHECK(tail.bed_distance_m == doctest::Approx(0.060));
    CHECK(tail.tail.air_c == 40.0);
    circuit.bank.element.cold_length_mm.reset();
    const heatmatch::TailHeat assumed = heatmatch::tail_heat(circuit);
    CHECK(std::any_of(assumed.assumed.begin(), assumed.assumed.end(), [](const auto& one) {
        return one.field == "cold_length_mm" && one.value.text() == "50 mm";
    }));
}

TEST_CASE("an element that is not a tube has no cold end to assess, and no exception") {
    for (const double diameter_mm : {0.5, 150.0}) {
        Circuit circuit = with_runs({{"a", "bank"}});
        circuit.bank.element.sheath_diameter_mm = diameter_mm;
        CHECK_FALSE(heatmatch::tail_heat(circuit).known());
    }
}

TEST_CASE("each element's own current heats its contact") {
    const Circuit circuit = with_runs({{"a", "bank"}});
    heatmatch::TailHeat tail = heatmatch::tail_heat(circuit);
    const double good = heatmatch::tail_at(tail, circuit, 200.0, 500.0).terminal_c;
    tail.tail.contact_ohm = 0.2;
    CHECK(heatmatch::tail_at(tail, circuit, 200.0, 500.0).terminal_c > good);
    CHECK(heatmatch::tail_at(heatmatch::tail_heat(circuit), circuit, 0.0, 25.0).terminal_c < 45.0);
}

TEST_CASE("a run that carries the bank carries the current of all branches") {
    Circuit one = with_runs({{"a", "branch"}});
    Circuit all = with_runs({{"a", "bank"}});
    const auto terminal_c = [](const Circuit& circuit) {
        return heatmatch::tail_at(heatmatch::tail_heat(circuit), circuit, 200.0, 300.0).terminal_c;
    };
    CHECK(terminal_c(all) > terminal_c(one));
    all.bank.hookup = {.series = 2, .parallel = 1};
    CHECK(terminal_c(all) == doctest::Approx(terminal_c(one)));
}

TEST_CASE("a run in the bed is buried, whatever is stated of the terminals") {
    Circuit circuit = with_runs({{"a", "bank"}});
    circuit.runs.back().run.surroundings = {.kind = heatmatch::SurroundingsKind::bed};
    const heatmatch::TailHeat tail = heatmatch::tail_heat(circuit);  // the demo: through the wall
    CHECK(tail.tail.place == heatmatch::TerminalPlace::buried);
    CHECK(std::any_of(tail.assumed.begin(), tail.assumed.end(), [](const auto& one) {
        return one.field == "terminals" && one.value.text() == "buried";
    }));
}

TEST_CASE("a sheath of unknown metal leaves its terminal unassessed") {
    Circuit circuit = with_runs({{"a", "bank"}});
    circuit.bank.element.sheath.clear();
    CHECK(heatmatch::tail_heat(circuit).missing == std::vector<std::string>{"sheath"});
}

// Source: the definition of the worst, with each end of the fill's conductivity put in by hand.
TEST_CASE("a terminal is judged at whichever end of the fill's conductivity makes it hotter") {
    constexpr double element_w = 200.0;
    int hotter_by_low = 0;
    int hotter_by_high = 0;
    for (const double cold_mm : {15.0, 40.0, 90.0, 250.0}) {
        for (const char* metal : {"stainless", "copper"}) {
            Circuit circuit = with_runs({{"a", "bank"}});
            circuit.bank.element.cold_length_mm = cold_mm;
            circuit.bank.element.sheath = metal;
            const heatmatch::BankHeat& heat = *circuit.heat;
            const heatmatch::TailHeat tail = heatmatch::tail_heat(circuit);
            const heatmatch::RunParts& run = circuit.runs.front();
            heatmatch::HotTail by_hand = tail.tail;
            by_hand.bed_c = heatmatch::bed_temperature_c(heat.careful, element_w * heat.elements,
                                                         tail.bed_distance_m);
            by_hand.sheath_c = std::max(500.0, by_hand.bed_c);
            by_hand.pin_a = std::sqrt(element_w / circuit.bank.each.typical_ohm);
            by_hand.current_a = 2.0 * *by_hand.pin_a;
            const auto terminal_c = [&](const heatmatch::BedCharge& charge) {
                by_hand.bed_conductivity_w_mk = charge.fill.conductivity.at(293.15);
                return heatmatch::tail_temperatures(by_hand, *run.wire, &*run.insulation)
                    .terminal_c;
            };
            const double low = terminal_c(heat.careful);
            const double high = terminal_c(heat.conducting);
            hotter_by_low += low > high + 0.5 ? 1 : 0;
            hotter_by_high += high > low + 0.5 ? 1 : 0;
            CHECK(heatmatch::tail_at(tail, circuit, element_w, 500.0).terminal_c ==
                  doctest::Approx(std::max(low, high)).epsilon(1e-9));
        }
    }
    CHECK(hotter_by_low > 0);
    CHECK(hotter_by_high > 0);
}

// Source: the definition: half-way between the wall as the bulk tells it, at the worse end of the
// fill, and the store's air.
TEST_CASE("unstated air at the tail is halfway from the store's air to its wall") {
    Circuit circuit = with_runs({{"a", "bank"}});
    circuit.runs.back().run.surroundings.air_c.reset();
    const heatmatch::TailHeat tail = heatmatch::tail_heat(circuit);
    CHECK_FALSE(tail.air_stated);
    CHECK(std::any_of(tail.assumed.begin(), tail.assumed.end(), [](const auto& one) {
        return one.field == "surroundings.air_c" &&
               one.value.text().find("half-way from 25 °C") != std::string::npos;
    }));
    const double watts = 200.0;
    const heatmatch::BankHeat& heat = *circuit.heat;
    const double power_w = watts * heat.elements;
    const double wall_c = std::max(heatmatch::bulk_only(heat.careful, power_w).wall_c,
                                   heatmatch::bulk_only(heat.conducting, power_w).wall_c);
    REQUIRE(wall_c > 35.0);
    const auto at = heatmatch::tail_at(tail, circuit, watts, 500.0);
    CHECK(at.air_c == doctest::Approx(0.5 * (25.0 + wall_c)).epsilon(0.01));
    // As hot as where that air is stated, and hotter than in the air of the store.
    circuit.runs.back().run.surroundings.air_c = at.air_c;
    CHECK(heatmatch::tail_at(heatmatch::tail_heat(circuit), circuit, watts, 500.0).terminal_c ==
          doctest::Approx(at.terminal_c).epsilon(1e-9));
    circuit.runs.back().run.surroundings.air_c = 25.0;
    CHECK(heatmatch::tail_at(heatmatch::tail_heat(circuit), circuit, watts, 500.0).terminal_c <
          at.terminal_c - 3.0);
}

TEST_CASE("a cold end through a lagged wall passes its lagging, as thick as stated or computed") {
    const auto tail_of = [](auto change) {
        heatmatch::Installation installation = drum();
        change(*installation.store);
        Circuit circuit = circuit_in(installation, "storage-rod-1000-240", 2);
        circuit.runs = {bench_run("silicone-14-awg", 40.0)};
        circuit.runs.back().run.carries = heatmatch::Carried::bank;
        return std::pair(heatmatch::tail_heat(circuit), circuit);
    };
    using heatmatch::Store;
    using heatmatch::StoreMaterial;
    const auto thick_m = [&](auto change) { return tail_of(change).first.tail.lagging_m; };
    CHECK(thick_m([](Store&) {}) == 0.0);  // the demo's drum is told to have none
    CHECK(thick_m([](Store& s) { s.lagging.reset(); }) == 0.0);
    CHECK(thick_m([](Store& s) { s.lagging = StoreMaterial::stone_wool; }) ==
          doctest::Approx(0.05));
    const auto lagged = [](Store& s) {
        s.lagging = StoreMaterial::stone_wool;
        s.side_u_w_m2k = 0.8;
    };
    CHECK(thick_m(lagged) == doctest::Approx(0.05));
    CHECK(thick_m([](Store& s) { s.lagging.reset(), s.side_u_w_m2k = 0.1; }) ==
          doctest::Approx(0.1));
    CHECK(thick_m([&](Store& s) { lagged(s), s.lagging_mm = 150.0; }) == doctest::Approx(0.15));
    CHECK(thick_m([&](Store& s) {
              lagged(s), s.terminals = heatmatch::StoreTerminals::box_outside;
          }) == 0.0);
    const auto [in_lagging, circuit] = tail_of(lagged);
    const auto hot = heatmatch::tail_at(in_lagging, circuit, 200.0, 500.0);
    heatmatch::TailHeat bare = in_lagging;
    bare.tail.lagging_m = 0.0;
    const auto open = heatmatch::tail_at(bare, circuit, 200.0, 500.0);
    CHECK(hot.terminal_c > open.terminal_c + 10.0);
    CHECK(hot.wire_c(0.05) > open.wire_c(0.05) + 5.0);
}

TEST_CASE("lagging does not shield a terminal from hotter air") {
    Circuit circuit = with_runs({{"a", "bank"}});
    circuit.runs.back().run.surroundings.air_c = 200.0;
    const auto terminal_c = [&circuit](heatmatch::SurroundingsKind kind) {
        circuit.runs.back().run.surroundings.kind = kind;
        return heatmatch::tail_at(heatmatch::tail_heat(circuit), circuit, 50.0, 120.0).terminal_c;
    };
    const double open = terminal_c(heatmatch::SurroundingsKind::open_air);
    CHECK(open < 200.0);
    CHECK(terminal_c(heatmatch::SurroundingsKind::cavity) >= open);
    CHECK(terminal_c(heatmatch::SurroundingsKind::conduit) >= open);
}
