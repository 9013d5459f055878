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
    std::vector<Assumption> assumed{};

    [[nodiscard]] bool known() const { return missing.empty(); }
};

/// The tail of a circuit: the last run that carries the bank or a branch, else the last of all.
/// Unless told the terminals are buried where that run lies in the bed, and through the wall
/// elsewhere; an unknown cold length counts 50 mm and the contact 5 mohm (both from memory).
[[nodiscard]] TailHeat tail_heat(const Circuit& circuit);

/// Judged temperatures at that power of each element, its sheath at `sheath_c`: the bed around
/// this end as hot as at the distance of the cold end from the hottest leg, and its conductivity at
/// whichever end makes the terminal hotter. Needs a known tail, and a bank known in its store.
[[nodiscard]] TailTemperatures tail_at(const TailHeat& tail, const Circuit& circuit,
                                       double element_w, double sheath_c);

}  // namespace heatmatch
