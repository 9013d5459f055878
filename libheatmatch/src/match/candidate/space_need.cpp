#include "heatmatch/match/candidate/space_need.hpp"

#include <algorithm>

#include "heatmatch/base/constants.hpp"

namespace heatmatch {

std::optional<double> needed_kwh_per_day(const SpaceBalance& space, const Weather& weather,
                                         std::span<const int> months) {
    if (!space.target_c || !space.known() || !weather.first_hour) return std::nullopt;
    double hours = 0.0;
    double kelvin_hours = 0.0;
    for (std::size_t row = 0; row < weather.size(); ++row) {
        const bool counts = months.empty() || std::find(months.begin(), months.end(),
                                                        weather.month[row]) != months.end();
        if (!counts) continue;
        hours += weather.hours[row];
        kelvin_hours += weather.hours[row] * std::max(0.0, *space.target_c - weather.base_c[row]);
    }
    if (hours <= 0.0) return std::nullopt;
    return 1e-3 * space.loss_w_k() * hours_of_day * kelvin_hours / hours;
}

}  // namespace heatmatch
