#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "heatmatch/setting/installation.hpp"

/// A quantity of an installation, changed in the direction that is more dangerous by physics or by
/// code, and the margins that must not improve by it.
struct YardDirection {
    std::string_view what{};
    std::vector<std::string_view> margins{};
    void (*move)(heatmatch::Installation& yard, double share) = nullptr;  //!< share of 0 to 1
    /// Headroom that a margin may gain nonetheless, by a smaller real effect of the same change.
    double slack = 0.0;
};

/// Changes of sun, panels, their hook-up, wires, joints and devices.
[[nodiscard]] const std::vector<YardDirection>& electrical_directions();
/// Changes of elements, stores and their contents.
[[nodiscard]] const std::vector<YardDirection>& thermal_directions();
