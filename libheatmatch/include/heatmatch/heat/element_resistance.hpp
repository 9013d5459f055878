#pragma once

#include <string>
#include <vector>

#include "heatmatch/parts/alloy.hpp"
#include "heatmatch/parts/class_defaults.hpp"
#include "heatmatch/parts/element.hpp"

namespace heatmatch {

/// Ohms of one element at a coil temperature, with the band of tolerance and alloy.
struct ElementResistance {
    double low_ohm = 0.0;
    double typical_ohm = 0.0;
    double high_ohm = 0.0;
    std::string basis{};  //!< measured, printed, or volts and watts
    bool fixed = true;    //!< false for lamps and PTC: one value says little
    std::vector<Assumption> assumed{};

    friend bool operator==(const ElementResistance&, const ElementResistance&) = default;
};

/// Resistance factor R(T)/R(20 °C) of a coil. Known alloys by their table. Unknown ones lie between
/// 0.97 and 1.17 at 700 °C, 1.02 typical, and in proportion below. @cite gb-t-1234
struct ResistanceFactor {
    double low = 1.0;
    double typical = 1.0;
    double high = 1.0;
};
[[nodiscard]] ResistanceFactor resistance_factor(const Alloy* alloy, double coil_temperature_c);

/// Measured ohms (within 1 %) win over printed ones, those over volts and watts. Printed ohms and
/// ratings have their power tolerance, +5/-10 % by default, which is -4.8/+11.1 % of ohms
/// (@cite tubular-catalogue-tolerance). Volts and watts hold at the rated coil temperature, taken
/// as 600 °C.
[[nodiscard]] ElementResistance element_resistance(const Element& element, const Alloy* alloy,
                                                   double coil_temperature_c);

}  // namespace heatmatch
