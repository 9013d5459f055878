#pragma once

#include <span>
#include <vector>

#include "heatmatch/solar/plane_nodes.hpp"

namespace heatmatch {

/// Energy of an array of unlike panels over the rows of its weather.
struct MixedEnergy {
    std::vector<double> delivered_kwh{};  //!< into each resistance
    double mpp_kwh = 0.0;                 //!< at the maximum power point of the whole array
    double sum_of_maxima_kwh = 0.0;       //!< of each panel alone, which no array exceeds
};

/// The exact sum over the sunlit rows of the months (none given: all rows), one curve a row.
/// `places` has one entry a panel, string by string. Throws InvalidInput for another number of
/// places than of panels, and where two planes differ in rows, hours or months: their weathers must
/// be made of one sky.
[[nodiscard]] MixedEnergy mixed_energy(const MixedArray& array, std::span<const PanelPlace> places,
                                       std::span<const Weather* const> planes,
                                       std::span<const double> resistance_ohm,
                                       std::span<const int> months = {});

/// Vmp/Imp of the array with all panels at 1000 W/m2 and 25 °C [ohm].
[[nodiscard]] double stc_match_ohm(const MixedArray& array);

}  // namespace heatmatch
