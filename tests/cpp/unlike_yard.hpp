#pragma once

#include "demo.hpp"

#include <string>

#include "heatmatch/match/candidate/assess.hpp"

/// The demo with one circuit whose array has that layout, into one rod.
inline heatmatch::Installation unlike_yard(std::string array) {
    heatmatch::Installation house = demo();
    house.circuit = {.array = std::move(array), .element = "storage-rod-1000-240", .bank = "1S2P"};
    return house;
}

inline heatmatch::Candidate array_candidate(const std::string& array) {
    return heatmatch::assess(starter(), unlike_yard(array));
}
