#include "screen_heat.hpp"

#include <algorithm>

#include "heatmatch/match/bank_margins.hpp"
#include "heatmatch/match/sheath_margins.hpp"
#include "heatmatch/match/store_margins.hpp"

namespace heatmatch {

int count_not_assessed(const std::vector<Margin>& margins) {
    return static_cast<int>(std::count_if(margins.begin(), margins.end(), [](const Margin& margin) {
        return margin.severity == Severity::not_assessed;
    }));
}

Screened screen_heat(const Circuit& circuit, const Extremes& extremes) {
    const std::optional<HeatPoint> heat = heat_of(circuit, extremes);
    Screened worst = screen_margins(sheath_margins(circuit, heat));
    const Screened store = screen_margins(store_margins(circuit, heat));
    if (store.headroom < worst.headroom) worst = store;
    return worst;
}

int lacking_of_bank(const Circuit& circuit, const Site& site) {
    const std::optional<HeatPoint> heat = heat_of(circuit, Extremes{});
    return count_not_assessed(bank_margins(circuit, site, Extremes{})) +
           count_not_assessed(sheath_margins(circuit, heat)) +
           count_not_assessed(store_margins(circuit, heat));
}

}  // namespace heatmatch
