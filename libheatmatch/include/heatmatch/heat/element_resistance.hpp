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

/// Data from which an element's resistance is determined.
enum class ResistanceBasis { measured, printed, volts_and_watts };
inline constexpr auto resistance_basis_words =
    std::to_array<std::string_view>({"measured", "printed", "volts and watts"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(ResistanceBasis) {
    return resistance_basis_words;
}

/// Resistance of one element at a coil temperature, with the band of tolerance and alloy.
struct ElementResistance {
    double low_ohm = 0.0;
    double typical_ohm = 0.0;
    double high_ohm = 0.0;
    ResistanceBasis basis = ResistanceBasis::volts_and_watts;
    bool fixed = true;  //!< false for lamps and PTC: their resistance varies strongly
    std::vector<Assumption> assumed{};

    friend bool operator==(const ElementResistance&, const ElementResistance&) = default;
};

/// Resistance factor R(T)/R(20 °C) of a coil. Known alloys by their table. Unknown ones are between
/// 0.97 and 1.17 at 700 °C, 1.02 typical, and in proportion below. @cite gb-t-1234
struct ResistanceFactor {
    double low = 1.0;
    double typical = 1.0;
    double high = 1.0;
};
[[nodiscard]] ResistanceFactor resistance_factor(const Alloy* alloy, double coil_temperature_c);

/// Measured resistance (within 1 %) takes precedence over printed, and printed over rated volts and
/// watts. Printed resistance and ratings have their power tolerance, +5/-10 % by default, which is
/// -4.8/+11.1 % of resistance (@cite tubular-catalogue-tolerance). Rated volts and watts hold at
/// the rated coil temperature, assumed to be 600 °C.
[[nodiscard]] ElementResistance element_resistance(const Element& element, const Alloy* alloy,
                                                   double coil_temperature_c);

}  // namespace heatmatch
