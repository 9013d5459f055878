#pragma once

#include <optional>
#include <vector>

#include "heatmatch/match/circuit/opens.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// What a limit does when nobody takes the heat out and the thermostat is welded.
struct LimitInTime {
    Answer acts = Answer::no;  //!< it opens before anything passes its limit
    bool called_for = true;    //!< something passes its limit, or the set point is reached
    int day = 0;               //!< of the stagnation, on which it opens at the latest; 0 for never
    Sentence first{};          //!< what has passed its limit by then
};

/// Follows the stagnation day by day: at the end of the first bright day on which the coldest end
/// of the sensed place has reached set point and tolerance, neither sheath, coil, wood, touch,
/// water nor the materials of the store may have passed their limits. The wall counts by its mean,
/// the lid at its hottest spot, the bed by its mean; the space cannot be told. In water it senses
/// the water, set to 93 °C at most. Needs a bank known in its store.
[[nodiscard]] LimitInTime limit_in_time(const Circuit& circuit, const PlacedDevice& limit,
                                        double element_w);

/// Whether a limit of the circuit surely opens it, and in time at those watts of each element.
[[nodiscard]] bool limit_counts(const Circuit& circuit, double element_w,
                                const OpeningSite& site = {});

/// Margins of what senses: whether a limit that opens the circuit acts in time and opens without
/// supply or probe, and whether what senses stands the place where it does.
[[nodiscard]] std::vector<Margin> limit_margins(const Circuit& circuit,
                                                const std::optional<HeatPoint>& point,
                                                const OpeningSite& site = {});

}  // namespace heatmatch
