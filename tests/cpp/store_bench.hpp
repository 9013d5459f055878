#pragma once

#include "demo.hpp"

#include "heatmatch/match/circuit/bank_heat.hpp"

/// The demo's drum of sand with all inputs of its heat stated, except wood near it.
inline heatmatch::Installation drum(double diameter_m = 0.57, double height_m = 0.85) {
    heatmatch::Installation installation = demo();
    heatmatch::Store& store = *installation.store;
    store.diameter_m = diameter_m;
    store.height_m = height_m;
    store.air_c = 25.0;
    store.moist = false;
    store.combustible_distance_mm.reset();
    return installation;
}

/// Equal elements of the starter in parallel, in the store of an installation.
inline heatmatch::Circuit circuit_in(const heatmatch::Installation& installation,
                                     std::string_view element, int count,
                                     std::string_view medium = "dry-sand") {
    heatmatch::Installation changed = installation;
    changed.store->medium = std::string(medium);
    heatmatch::Circuit circuit =
        bench_circuit("silicon-60-cell-245", {2, 1}, element, {.series = 1, .parallel = count});
    circuit.heat =
        heatmatch::bank_heat(heatmatch::fill_store(starter(), changed), circuit.bank.element,
                             circuit.bank.sheath, circuit.bank.alloy, count);
    return circuit;
}
