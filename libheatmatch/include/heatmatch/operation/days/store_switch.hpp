#pragma once

#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/circuit/opening.hpp"

namespace heatmatch {

/// A control that opens the circuit by temperature, within its ratings.
struct StoreSwitch {
    std::string device{};  //!< id of the control that senses
    SensedPlace senses = SensedPlace::wall;
    double opens_c = 0.0;   //!< [°C]
    double closes_c = 0.0;  //!< if it resets automatically [°C]
    bool resets = true;     //!< false for a limit only
    std::string breaks{};   //!< id of the control that opens the circuit for it
    bool can_break = true;  //!< its DC voltage and current are within the rating of that control
};

/// The sensing controls of a circuit with a set point, as far as they open it according to opens():
/// by their own contacts or through the controls they drive. A control without a set point, with
/// one outside its range, or without contacts that break the circuit is reported in `remarks` and
/// counts as never opening.
[[nodiscard]] std::vector<StoreSwitch> store_switches(const Circuit& circuit, Sentences& remarks,
                                                      const OpeningSite& site = {});

}  // namespace heatmatch
