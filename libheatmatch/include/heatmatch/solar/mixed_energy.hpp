#pragma once

#include <span>
#include <vector>

#include "heatmatch/solar/mixed_array.hpp"
#include "heatmatch/solar/weather.hpp"

namespace heatmatch {

/// Where a panel of an array stands: the weather of its plane, and what makes its cells warm.
struct PanelPlace {
    const Weather* weather = nullptr;  //!< of its plane; all planes have the same rows
    double noct_c = 45.0;              //!< nominal operating cell temperature [°C]
    std::vector<double> shade{};       //!< of each substring, 0 to 1; empty: none
};

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
                                       std::span<const double> resistance_ohm,
                                       std::span<const int> months = {});

}  // namespace heatmatch
