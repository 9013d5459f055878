#pragma once

#include "demo.hpp"

#include <vector>

#include "heatmatch/match/candidate/assess.hpp"

/// The demo with two circuits: the barn pair and half of the porch panels, each into one rod.
inline heatmatch::Installation two_circuits() {
    heatmatch::Installation house = demo();
    house.circuit.reset();
    house.circuits = {{.name = "barn",
                       .group = "barn pair",
                       .panels = "2S1P",
                       .element = "storage-rod-1000-240",
                       .bank = "1S1P"},
                      {.name = "porch",
                       .group = "porch four",
                       .panels = "2S1P",
                       .element = "storage-rod-1000-240",
                       .bank = "1S1P"}};
    return house;
}
