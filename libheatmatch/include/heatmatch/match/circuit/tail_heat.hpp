#pragma once

#include <optional>
#include <string>
#include <vector>

#include "heatmatch/heat/hot_tail.hpp"
#include "heatmatch/match/circuit/circuit.hpp"

namespace heatmatch {

/// The end of an element with its run of wire, prepared for any power.
struct TailHeat {
    std::vector<std::string> missing{};  //!< fields that are missing to compute anything
    RunParts run{};                      //!< the run at the element
    HotTail tail{};
    double bed_distance_m = 0.0;  //!< distance from a leg at which the bed temperature applies [m]
    bool air_stated = true;       //!< or the run is in the bed
    std::vector<Assumption> assumed{};

    [[nodiscard]] bool known() const { return missing.empty(); }
    /// The tail at a wall with those temperatures inside and outside. Lagging is as hot as the wall
    /// where they meet. Air that is not stated is halfway between the air of the store and the
    /// wall, as in the film of air along it.
    [[nodiscard]] HotTail beside_wall(double inner_c, double outer_c) const;
};

/// The tail of a circuit: the last run with the current of the bank or a branch, else the last of
/// all. If not stated, the terminals are buried where that run lies in the bed, and through the
/// wall elsewhere; an unknown cold length is 50 mm and the contact 5 mohm (both from memory). From
/// wall or box on, the wire has the surroundings of its run. Through the wall, sheath and wire pass
/// its lagging: as thick as stated, otherwise as mineral wool for the heat loss stated for the wall
/// (50 mm where nothing is stated, 100 mm at most). Not known for a whole unlike bank: each of its
/// elements has its own.
[[nodiscard]] TailHeat tail_heat(const Circuit& circuit);

/// Temperatures for a verdict at that power of each element, its sheath at `sheath_c`. The bed
/// around this end is as hot as at the distance of the cold end from the hottest leg; its
/// conductivity is the end at which the terminal is hotter. If the air is hotter than the terminal,
/// lagging does not count. Needs a known tail, and a bank known in its store.
[[nodiscard]] TailTemperatures tail_at(const TailHeat& tail, const Circuit& circuit,
                                       double element_w, double sheath_c);

}  // namespace heatmatch
