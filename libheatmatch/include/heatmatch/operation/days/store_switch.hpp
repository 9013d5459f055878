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

/// The controls of a circuit that sense and are set. One that only senses acts through the first
/// control that breaks direct current by itself (no hand switch). Volts and amperes are those of
/// the coldest morning and of full sun. What has no set point, or nothing to act through, is told
/// in `remarks` and counts as never opening.
[[nodiscard]] std::vector<StoreSwitch> store_switches(const Circuit& circuit, Sentences& remarks);

}  // namespace heatmatch
