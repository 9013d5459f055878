#include "heatmatch/solar/panel_energy.hpp"

#include <algorithm>
#include <utility>

namespace heatmatch {

namespace {

/// One panel with its substrings in light and in shade, and its share of the blocking diode.
PlacedArray placed_panel(const PanelInService& panel, const WeatherNodes& nodes, int series) {
    const int diodes = bypass_diodes_of(panel.panel);
    const int substrings = std::max(1, diodes);
    const int shaded =
        nodes.shaded_w_m2.empty() ? 0 : std::clamp(panel.shaded_substrings, 1, substrings);
    PlacedArray placed{.planes = {nodes}};
    PanelString string;
    if (panel.blocking) string.blocking_v = diode_drop_v / series;
    const auto add = [&](int count, std::size_t plane) {
        if (count == 0) return;
        string.panels.push_back(
            {.diode = panel.today.scaled(1.0, static_cast<double>(count) / substrings),
             .substrings = count,
             .bypass = diodes > 0});
        placed.places.push_back({.plane = plane, .noct_c = *panel.panel.noct_c});
    };
    add(substrings - shaded, 0);
    add(shaded, 1);
    if (shaded > 0) {
        WeatherNodes dark = nodes;
        dark.irradiance_w_m2 = nodes.shaded_w_m2;
        dark.heating_irradiance_w_m2 = nodes.shaded_heating_w_m2;
        placed.planes.push_back(std::move(dark));
    }
    placed.array = MixedArray::of({std::move(string)});
    return placed;
}

}  // namespace

EnergyCurve panel_energy(const PanelInService& panel, const WeatherNodes& nodes, VectorWidth width,
                         int series) {
    const double noon_ohm = *panel.panel.v_mp / *panel.panel.i_mp;
    constexpr std::size_t points = 48;
    if (panel.blocking || !nodes.shaded_w_m2.empty()) {
        return {placed_panel(panel, nodes, series), noon_ohm, points};
    }
    return {panel.today, *panel.panel.noct_c, nodes, noon_ohm, width};
}

}  // namespace heatmatch
