#pragma once

#include "heatmatch/solar/energy_curve.hpp"
#include "heatmatch/solar/panel_in_service.hpp"

namespace heatmatch {

/// Energy curve of an owned panel in its present condition. Where the nodes have shaded
/// substrings, they are in series with the others, each behind its bypass diode; equal panels
/// that are all shaded alike scale to arrays as unshaded ones do. The blocking diode of a string
/// takes its share of each of the `series` panels.
[[nodiscard]] EnergyCurve panel_energy(const PanelInService& panel, const WeatherNodes& nodes,
                                       VectorWidth width = VectorWidth::automatic, int series = 1);

}  // namespace heatmatch
