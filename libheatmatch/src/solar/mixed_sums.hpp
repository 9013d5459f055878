#pragma once

#include <span>
#include <vector>

#include "heatmatch/solar/plane_nodes.hpp"

namespace heatmatch {

/// Conditions of each panel in a node or row.
[[nodiscard]] std::vector<PanelConditions> conditions_of(std::span<const PanelPlace> places,
                                                         std::span<const WeatherNodes> planes,
                                                         std::size_t node);

/// Energy of an array over nodes into each of rising resistances, and its slope over ln R [Wh]. A
/// point starts at the one before it, so that few steps remain: 1e-8 of the power of a node.
void mixed_sums(const MixedArray& array, std::span<const PanelPlace> places,
                std::span<const WeatherNodes> planes, std::span<const double> resistance_ohm,
                std::span<double> energy_wh, std::span<double> slope_wh);

}  // namespace heatmatch
