#include "heatmatch/solar/mixed_energy.hpp"

#include "mixed_sums.hpp"

#include <algorithm>

namespace heatmatch {

MixedEnergy mixed_energy(const MixedArray& array, std::span<const PanelPlace> places,
                         std::span<const Weather* const> planes,
                         std::span<const double> resistance_ohm, std::span<const int> months) {
    check_places(array, places, planes);
    const std::vector<WeatherNodes> rows =
        plane_nodes(planes, {.months = {months.begin(), months.end()}, .exact = true});
    MixedEnergy energy{.delivered_kwh = std::vector<double>(resistance_ohm.size(), 0.0)};
    for (std::size_t row = 0; row < rows.front().size(); ++row) {
        const MixedArrayCurve curve = array.at(conditions_of(places, rows, row));
        const double kilohours = rows.front().hours[row] / 1000.0;
        for (std::size_t r = 0; r < resistance_ohm.size(); ++r) {
            energy.delivered_kwh[r] += kilohours * curve.into_resistance(resistance_ohm[r]).power_w;
        }
        energy.mpp_kwh += kilohours * curve.maximum_power().power_w;
        energy.sum_of_maxima_kwh += kilohours * curve.sum_of_maxima_w();
    }
    return energy;
}

double stc_match_ohm(const MixedArray& array) {
    const std::vector<PanelConditions> bright(
        array.panel_count(),
        {.irradiance_w_m2 = stc_irradiance_w_m2, .cell_temperature_c = stc_temperature_c});
    const OperatingPoint best = array.at(bright).maximum_power();
    return best.current_a > 0.0 ? best.voltage_v / best.current_a : 0.0;
}

}  // namespace heatmatch
