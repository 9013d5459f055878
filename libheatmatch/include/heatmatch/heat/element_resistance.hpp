#pragma once

#include <array>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "heatmatch/base/choice.hpp"
#include "heatmatch/parts/alloy.hpp"
#include "heatmatch/parts/class_defaults.hpp"
#include "heatmatch/parts/element.hpp"

namespace heatmatch {

/// What the ohms of an element come from.
enum class ResistanceBasis { measured, printed, volts_and_watts };
inline constexpr auto resistance_basis_words =
    std::to_array<std::string_view>({"measured", "printed", "volts and watts"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(ResistanceBasis) {
    return resistance_basis_words;
}

/// Ohms of one element at a coil temperature, with the band of tolerance and alloy.
struct ElementResistance {
    double low_ohm = 0.0;
    double typical_ohm = 0.0;
    double high_ohm = 0.0;
    ResistanceBasis basis = ResistanceBasis::volts_and_watts;
    bool fixed = true;  //!< false for lamps and PTC: one value says little
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
