#include "settled.hpp"

#include <vector>

#include "heatmatch/match/margins/sheath_margins.hpp"
#include "heatmatch/match/margins/store_margins.hpp"
#include "heatmatch/match/margins/tail_margins.hpp"
#include "heatmatch/match/rank/alternative.hpp"

namespace heatmatch {

bool settled_bank(const Circuit& circuit, const Site& site) {
    if (!circuit.heat || !circuit.heat->missing.empty()) return false;
    const Extremes idle{};
    const std::optional<HeatPoint> heat = heat_of(circuit, idle);
    const OpeningSite at = opening_site(site);
    return all_decided(sheath_margins(circuit, heat, at)) &&
           all_decided(std::vector{survivor_sheath_margin(circuit, idle)}) &&
           all_decided(store_margins(circuit, heat, at)) &&
           all_decided(tail_margins(circuit, site, idle, heat));
}

}  // namespace heatmatch
