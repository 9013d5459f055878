#pragma once

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/circuit/opens.hpp"

namespace heatmatch {

/// Effect of an overtemperature limit when no heat is extracted and the thermostat is welded.
struct LimitInTime {
    Answer acts = Answer::no;  //!< it opens before any part exceeds its limit
    bool called_for = true;    //!< a part exceeds its limit, or the set point is reached
    int day = 0;               //!< day of the stagnation by which it opens; 0 for never
    Sentence first{};          //!< the first part above its limit by then
};

/// Follows the stagnation day by day. The limit opens at the end of the first bright day on which
/// the coldest spot of the sensed place has reached set point plus tolerance. By then sheath, coil,
/// wood, touch surfaces, water and the materials of the store must be within their limits. The wall
/// counts by its mean, the lid at its hottest spot, the bed by its mean; for the space no result is
/// possible. In water it senses the water, with a set point of 93 °C at most. With other
/// circuits in the store it has to act in time with their heat and without it. Needs a bank known
/// in its store.
[[nodiscard]] LimitInTime limit_in_time(const Circuit& circuit, const PlacedDevice& limit,
                                        double element_w);

/// Whether a limit of the circuit certainly opens it, and in time, at that power of each element,
/// and limits open all other circuits of its store.
[[nodiscard]] bool limit_counts(const Circuit& circuit, double element_w,
                                const OpeningSite& site = {});

/// The first other circuit of its store that no limit opens; null without one.
[[nodiscard]] const OtherBank* unlimited_circuit(const Circuit& circuit);

}  // namespace heatmatch
