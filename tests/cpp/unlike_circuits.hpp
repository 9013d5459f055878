#pragma once

#include "demo.hpp"

#include <string>
#include <utility>
#include <vector>

#include "heatmatch/match/candidate/assess.hpp"
#include "heatmatch/match/circuit/element_view.hpp"
#include "heatmatch/match/circuit/unlike_bank.hpp"

/// An invented rod of measured resistance, with everything known that margins need.
inline heatmatch::Element bench_rod(const std::string& id, double ohm, double length_mm = 1200.0) {
    heatmatch::Element rod = heatmatch::find_element(starter(), "storage-rod-1000-240");
    rod.id = id;
    rod.label = id;
    rod.rated_v = 120.0;
    rod.rated_w = 120.0 * 120.0 / ohm;
    rod.measured_resistance_ohm = ohm;
    rod.heated_length_mm = length_mm;
    rod.price = {.low = 10.0, .high = 20.0, .currency = "USD"};
    return rod;
}

/// The demo with three rods of its own, wired as that layout.
inline heatmatch::Installation unlike_house(const std::string& layout) {
    heatmatch::Installation house = demo();
    house.parts.elements = {bench_rod("rod-a", 12.0), bench_rod("rod-b", 18.0, 900.0),
                            bench_rod("rod-c", 30.0)};
    house.circuit->element.clear();
    house.circuit->bank.clear();
    house.circuit->elements = layout;
    return house;
}

inline heatmatch::Candidate unlike_candidate(const heatmatch::Installation& house) {
    return heatmatch::assess(starter(), house, {.memory = nullptr});
}
inline heatmatch::Candidate unlike_candidate(const std::string& layout) {
    return unlike_candidate(unlike_house(layout));
}
