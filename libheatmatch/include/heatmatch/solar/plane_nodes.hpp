#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "heatmatch/solar/mixed_array.hpp"
#include "heatmatch/solar/weather_nodes.hpp"

namespace heatmatch {

/// The plane of a panel of an array, and what warms its cells.
struct PanelPlace {
    std::size_t plane = 0;        //!< in the list of planes
    double noct_c = 45.0;         //!< nominal operating cell temperature [°C]
    std::vector<double> shade{};  //!< of each substring, 0 to 1; empty: none

    friend bool operator==(const PanelPlace&, const PanelPlace&) = default;
};

/// Checks that each panel has a place on a plane, and that all planes have the same rows, hours and
/// months. Throws InvalidInput.
void check_places(const MixedArray& array, std::span<const PanelPlace> places,
                  std::span<const Weather* const> planes);

/// Nodes of several planes under one sky, all with the same hours. One plane has those of
/// weather_nodes(). Two are binned together by the irradiance on both, with edges at the squares of
/// equal steps, and by the temperature on the first; each bin has two nodes along the main axis of
/// its irradiances, temperatures by regression on it, which keep hours, means and the larger part
/// of the variances. From three planes on, and with `exact`, every sunlit row is a node. Throws
/// InvalidInput where no plane has sun in the months.
[[nodiscard]] std::vector<WeatherNodes> plane_nodes(std::span<const Weather* const> planes,
                                                    const NodeOptions& options = {});

}  // namespace heatmatch
