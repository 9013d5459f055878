#pragma once

#include <optional>
#include <string>
#include <vector>

#include "heatmatch/heat/hot_tail.hpp"
#include "heatmatch/match/circuit/circuit.hpp"

namespace heatmatch {

/// The end of an element with the run of wire on it, made ready for any power.
struct TailHeat {
    std::vector<std::string> missing{};  //!< why nothing can be computed
    RunParts run{};                      //!< the run at the element
    HotTail tail{};
    double bed_distance_m = 0.0;  //!< from a leg, where the bed around this end is taken [m]
    bool air_stated = true;       //!< or the run lies in the bed
    std::vector<Assumption> assumed{};

    [[nodiscard]] bool known() const { return missing.empty(); }
    /// The tail beside a wall as hot as that inside and outside: lagging is as hot as the wall
    /// where they meet, and air that nobody stated half-way from the store's to the wall, as in the
    /// film of air along it.
    [[nodiscard]] HotTail beside_wall(double inner_c, double outer_c) const;
};

/// The tail of a circuit: the last run that carries the bank or a branch, else the last of all.
/// Unless told the terminals are buried where that run lies in the bed, and through the wall
/// elsewhere; an unknown cold length counts 50 mm and the contact 5 mohm (both from memory). From
/// wall or box on the wire lies in what its run lies in; through the wall sheath and wire pass its
/// lagging: as thick as stated, else as mineral wool by the heat loss stated for the wall (50 mm
/// where nothing is stated, 100 mm at most).
[[nodiscard]] TailHeat tail_heat(const Circuit& circuit);

/// Judged temperatures at that power of each element, its sheath at `sheath_c`: the bed around
/// this end as hot as at the distance of the cold end from the hottest leg, and its conductivity at
/// whichever end makes the terminal hotter; hotter air than the terminal counts as if no lagging
/// kept it away. Needs a known tail, and a bank known in its store.
[[nodiscard]] TailTemperatures tail_at(const TailHeat& tail, const Circuit& circuit,
                                       double element_w, double sheath_c);

}  // namespace heatmatch
