#pragma once

#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/circuit/circuit.hpp"

namespace heatmatch {

/// A control that opens the circuit by temperature, as far as it can.
struct StoreSwitch {
    std::string device{};  //!< id of the control that senses
    SensedPlace senses = SensedPlace::wall;
    double opens_c = 0.0;   //!< [°C]
    double closes_c = 0.0;  //!< of one that resets by itself [°C]
    bool resets = true;     //!< false for a limit
    std::string breaks{};   //!< id of the control that opens the circuit for it
    bool can_break = true;  //!< its direct volts and amperes are within that one's rating
};

/// The controls of a circuit that sense and are set, as far as opens() has them open it: by their
/// own contacts, or by what they are told to drive. What has no set point, or nothing to act
/// through, is told in `remarks` and counts as never opening.
[[nodiscard]] std::vector<StoreSwitch> store_switches(const Circuit& circuit, Sentences& remarks);

}  // namespace heatmatch
