#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "heatmatch/setting/installation.hpp"

/// A quantity of an installation, moved the way that is dangerous by physics or by code, and the
/// margins that may not get better by it.
struct YardDirection {
    std::string_view what{};
    std::vector<std::string_view> margins{};
    void (*move)(heatmatch::Installation& yard, double share) = nullptr;  //!< share of 0 to 1
    /// Of headroom: what a smaller effect the other way, which the model has too, may give back.
    double slack = 0.0;
};

/// Of the sun, the panels and their hook-up, and of wires, joints and devices.
[[nodiscard]] const std::vector<YardDirection>& electrical_directions();
/// Of elements, stores and what is in them.
[[nodiscard]] const std::vector<YardDirection>& thermal_directions();
