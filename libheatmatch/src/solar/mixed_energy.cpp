#include "heatmatch/solar/mixed_energy.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <string>

#include "heatmatch/base/error.hpp"

namespace heatmatch {

namespace {

using solar_sentences::say;

void check_places(const MixedArray& array, std::span<const PanelPlace> places) {
    if (places.size() != array.panel_count()) {
        throw InvalidInput(ErrorDetail{.part = "array",
                                       .field = "places",
                                       .value = std::to_string(places.size()) + " panels",
                                       .allowed = "one for each panel, string by string",
                                       .remedy = say<"solar.panel_conditions">(with<"count">(
                                           static_cast<double>(array.panel_count())))});
    }
    const Weather& first = *places.front().weather;
    for (std::size_t i = 1; i < places.size(); ++i) {
        const Weather& other = *places[i].weather;
        if (&other == &first || (other.hours == first.hours && other.month == first.month)) {
            continue;
        }
        throw InvalidInput(ErrorDetail{.part = "array: panel " + std::to_string(i + 1),
                                       .field = "weather",
                                       .value = std::to_string(other.size()) + " rows",
                                       .allowed = "the hours and months of the first panel's",
                                       .remedy = say<"solar.one_sky">()});
    }
}

}  // namespace

MixedEnergy mixed_energy(const MixedArray& array, std::span<const PanelPlace> places,
                         std::span<const double> resistance_ohm, std::span<const int> months) {
    check_places(array, places);
    MixedEnergy energy{.delivered_kwh = std::vector<double>(resistance_ohm.size(), 0.0)};
    const Weather& rows = *places.front().weather;
    std::vector<PanelConditions> conditions(places.size());
    for (std::size_t i = 0; i < places.size(); ++i) conditions[i].shade = places[i].shade;
    for (std::size_t row = 0; row < rows.size(); ++row) {
        if (!months.empty() &&
            std::find(months.begin(), months.end(), rows.month[row]) == months.end()) {
            continue;
        }
        bool sunlit = false;
        for (std::size_t i = 0; i < places.size(); ++i) {
            const Weather& weather = *places[i].weather;
            conditions[i].irradiance_w_m2 = weather.irradiance_w_m2[row];
            conditions[i].cell_temperature_c = weather.cell_temperature_c(row, places[i].noct_c);
            sunlit = sunlit || conditions[i].irradiance_w_m2 > 0.0;
        }
        if (!sunlit) continue;
        const MixedArrayCurve curve = array.at(conditions);
        const double kilohours = rows.hours[row] / 1000.0;
        for (std::size_t r = 0; r < resistance_ohm.size(); ++r) {
            energy.delivered_kwh[r] += kilohours * curve.into_resistance(resistance_ohm[r]).power_w;
        }
        energy.mpp_kwh += kilohours * curve.maximum_power().power_w;
        energy.sum_of_maxima_kwh += kilohours * curve.sum_of_maxima_w();
    }
    return energy;
}

}  // namespace heatmatch
