#pragma once

#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/circuit/opening.hpp"

namespace heatmatch {

/// A control that opens the circuit by temperature, as far as it can.
struct StoreSwitch {
    std::string device{};  //!< id of the control that senses
    SensedPlace senses = SensedPlace::wall;
    double opens_c = 0.0;   //!< [°C]
    double closes_c = 0.0;  //!< of one that resets by itself [°C]
    bool resets = true;     //!< false for a limit only
    std::string breaks{};   //!< id of the control that opens the circuit for it
    bool can_break = true;  //!< its direct volts and amperes are within that one's rating
};

/// The controls of a circuit that sense and are set, as far as opens() has them open it: by their
/// own contacts, or by what they are told to drive. What has no set point, one that it is not made
/// for, or nothing to act through, is told in `remarks` and counts as never opening.
[[nodiscard]] std::vector<StoreSwitch> store_switches(const Circuit& circuit, Sentences& remarks,
                                                      const OpeningSite& site = {});

}  // namespace heatmatch
