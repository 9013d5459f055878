#include "each_place.hpp"
#include "judged_candidate.hpp"
#include "store_bench.hpp"

#include <array>

#include <doctest/doctest.h>

#include "heatmatch/match/margins/device_margins.hpp"
#include "heatmatch/match/margins/limit_margins.hpp"
#include "heatmatch/match/margins/material_margins.hpp"
#include "heatmatch/match/margins/run_ampacity.hpp"
#include "heatmatch/match/margins/sensor_margins.hpp"
#include "heatmatch/match/margins/store_margins.hpp"

// As test_worst_of_several.cpp, for devices, the places that they sense, and a store.

using heatmatch::Circuit;
using heatmatch::Hookup;
using heatmatch::Margin;
using heatmatch::PlacedDevice;
using heatmatch::RunParts;
using heatmatch::Severity;
using heatmatch::StoreMaterial;

namespace {

PlacedDevice device_called(PlacedDevice placed, const char* id) {
    placed.control.id = id;
    return placed;
}

}  // namespace

TEST_CASE("of several devices the one that breaks least is named and valued") {
    PlacedDevice weak = device_called(bench_device("pv-isolator-2-pole", "breaks dc", 2), "weak");
    weak.control.dc_ratings = {{.v_dc = 500.0, .a_dc = 3.0, .poles = 2}};
    const PlacedDevice strong =
        device_called(bench_device("pv-isolator-2-pole", "breaks dc", 2), "strong");
    in_each_place(weak, strong, [](const auto& devices) {
        Circuit circuit = silicon_circuit({2, 1});
        circuit.runs = {spliced_run("bench", "thhn-12-awg")};
        circuit.devices = devices;
        const auto candidate = with_margins(device_margins(circuit, cold_site));
        REQUIRE(candidate.worst() != nullptr);
        CHECK(candidate.worst()->subject == "device \"weak\"");
        CHECK(candidate.worst()->severity == Severity::danger);
        CHECK(*candidate.worst()->value == doctest::Approx(1.25 * 8.66));
        CHECK(*candidate.worst()->limit == 3.0);
    });
}

TEST_CASE(
    "of several devices that are not disconnects the most dangerous is named, and a real "
    "one suffices") {
    const PlacedDevice coil =
        device_called(bench_device("dc-contactor-sealed-450-v", "breaks dc"), "coil");
    const PlacedDevice fuse = device_called(bench_device("gpv-fuse-10x38", "breaks dc"), "fuse");
    const PlacedDevice hand =
        device_called(bench_device("pv-isolator-2-pole", "breaks dc", 2), "hand");
    const auto disconnect = [](const std::vector<PlacedDevice>& devices) {
        Circuit circuit = silicon_circuit({2, 1});
        circuit.runs = {spliced_run("bench", "thhn-12-awg")};
        circuit.devices = devices;
        return margin_of(device_margins(circuit, cold_site), "disconnect");
    };
    CHECK(disconnect({coil, coil, coil}).severity == Severity::warning);
    in_each_place(fuse, coil, [&](const auto& devices) {
        const Margin margin = disconnect(devices);
        CHECK(margin.severity == Severity::danger);
        CHECK(*margin.headroom == -1.0);
        CHECK(contains(margin.sentence(), "\"fuse\""));
    });
    in_each_place(hand, fuse, [&](const auto& devices) {
        CHECK(disconnect(devices).severity == Severity::none);
        CHECK(contains(disconnect(devices).sentence(), "\"hand\""));
    });
}

// NEC 110.14(C), from memory: terminals without a mark count as 60 °C, where 12 AWG has 20 A.
TEST_CASE("of several devices in a run the terminals for the least heat set its current") {
    PlacedDevice marked = bench_device("pv-isolator-2-pole", "breaks dc", 2);
    marked.control.terminal_limit_c = 75.0;
    PlacedDevice unmarked = marked;
    unmarked.control.terminal_limit_c.reset();
    const auto figure = [](const std::vector<PlacedDevice>& devices) {
        RunParts run = spliced_run("bench", "thhn-12-awg");
        run.run.surroundings.kind = heatmatch::SurroundingsKind::conduit;
        run.run.carries = heatmatch::Carried::array;
        run.connector = heatmatch::find_connector(starter(), "pv-plug-4-mm");
        run.wire->ampacity_a.reset();
        RunParts tail = spliced_run("tail", "silicone-14-awg");
        tail.run.carries = heatmatch::Carried::bank;
        Circuit circuit = silicon_circuit({1, 1});
        circuit.runs = {run, tail};
        circuit.devices = devices;
        return run_ampacity(circuit, circuit.runs.front(),
                            {.record_low_c = -20.0, .code = heatmatch::WiringCode::nec});
    };
    CHECK(*figure({marked, marked, marked}).table_a == 25.0);
    in_each_place(unmarked, marked, [&](const auto& devices) {
        CHECK(*figure(devices).table_a == 20.0);
        CHECK(figure(devices).unmarked);
    });
}

TEST_CASE("wood and hands are assessed at the hotter of wall and lid") {
    const Circuit circuit = circuit_in(drum(), "storage-rod-1000-240", 2);
    heatmatch::HeatPoint point = circuit.heat->at(50.0);
    for (const auto& [wall_c, lid_c] : {std::pair(90.0, 40.0), std::pair(40.0, 90.0)}) {
        point.wall_c = wall_c;
        point.lid_c = lid_c;
        const auto margins = store_margins(circuit, point);
        check_judged(margin_of(margins, "touch temperature"), Severity::warning, 90.0, 65.0, 20.0);
        CHECK(*margin_of(margins, "wall and lid").value == 90.0);
    }
}

TEST_CASE("a sensing device has the temperature of its own place") {
    Circuit circuit = circuit_in(drum(), "storage-rod-1000-240", 2);
    circuit.runs = {spliced_run("bench", "thhn-12-awg")};
    heatmatch::HeatPoint point = circuit.heat->at(50.0);
    point.wall_c = 41.0;
    point.lid_c = 52.0;
    point.bed_mean_c = 63.0;
    using heatmatch::SensedPlace;
    const auto places = std::to_array<std::pair<SensedPlace, double>>({{SensedPlace::wall, 41.0},
                                                                       {SensedPlace::lid, 52.0},
                                                                       {SensedPlace::bed, 63.0},
                                                                       {SensedPlace::space, 25.0}});
    for (const auto& [place, there_c] : places) {
        circuit.devices = {bench_device("snap-disc-fixed", "senses only", 1, "")};
        circuit.devices.front().device.senses = place;
        CHECK(*margin_of(sensor_margins(circuit, point), "device temperature").value == there_c);
    }
    circuit.devices.front().device.senses.reset();
    CHECK(*margin_of(sensor_margins(circuit, point), "device temperature").value == 41.0);
    // Where it may be any place, the hottest.
    circuit.devices.front().anywhere = true;
    for (double* hottest_c : {&point.wall_c, &point.lid_c, &point.bed_mean_c}) {
        *hottest_c += 100.0;
        CHECK(*margin_of(sensor_margins(circuit, point), "device temperature").value == *hottest_c);
        *hottest_c -= 100.0;
    }
}

TEST_CASE("of vessel, liner and lagging whichever is weak is the one that is found") {
    using heatmatch::Store;
    const auto layers =
        std::to_array<std::pair<const char*, std::optional<StoreMaterial> Store::*>>(
            {{"vessel material", &Store::vessel},
             {"liner material", &Store::liner},
             {"lagging material", &Store::lagging}});
    const double weak_c = heatmatch::find_material_limit(StoreMaterial::polystyrene)->years_c;
    for (const auto& [weak, at] : layers) {
        heatmatch::Installation installation = drum();
        for (const auto& layer : layers) {
            (*installation.store).*layer.second = StoreMaterial::stainless_steel;
        }
        CHECK_FALSE(heatmatch::passes_material(*installation.store, weak_c + 30.0));
        (*installation.store).*at = StoreMaterial::polystyrene;
        CHECK(heatmatch::passes_material(*installation.store, weak_c + 1.0));
        CHECK_FALSE(heatmatch::passes_material(*installation.store, weak_c));
        const Circuit circuit = circuit_in(installation, "storage-rod-1000-240", 2);
        heatmatch::HeatPoint point = circuit.heat->at(50.0);
        point.inner_c = weak_c - 1.0;
        point.stagnation_inner_c = weak_c + 30.0;
        for (const Margin& margin : material_margins(circuit, point)) {
            CAPTURE(margin.name);
            CHECK((margin.severity == Severity::danger) == (margin.name == weak));
            CHECK(*margin.value == weak_c + 30.0);
        }
    }
}

TEST_CASE("of several limits one that acts in time is enough, wherever it is listed") {
    heatmatch::Installation installation = drum();
    auto& store = *installation.store;
    store.side_u_w_m2k = store.top_u_w_m2k = store.bottom_u_w_m2k = 0.4;
    Circuit circuit = circuit_in(installation, "storage-rod-1000-240", 2);
    circuit.runs = {bench_run("thhn-12-awg", 30.0)};
    const double watts =
        0.5 * (*circuit.heat->largest_element_w(false) + *circuit.heat->largest_element_w(true));
    PlacedDevice acts = bench_device("limit-controller-thermocouple", "senses only", 1, "");
    acts.device.set_c = 100.0;
    acts.device.set_tolerance_k = 5.0;
    acts.device.senses = heatmatch::SensedPlace::bed;
    acts.device.drives = {"dc-contactor-sealed-450-v"};
    PlacedDevice late = acts;
    late.device.set_c = 600.0;
    const auto counts = [&](std::vector<PlacedDevice> limits) {
        limits.push_back(bench_device("dc-contactor-sealed-450-v", "breaks dc"));
        circuit.devices = std::move(limits);
        return heatmatch::limit_counts(circuit, watts, {});
    };
    CHECK_FALSE(counts({late, late, late}));
    in_each_place(acts, late, [&](const auto& limits) { CHECK(counts(limits)); });
}
