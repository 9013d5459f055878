#pragma once

#include <limits>
#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/limits.hpp"

namespace heatmatch {

[[nodiscard]] int count_not_assessed(const std::vector<Margin>& margins);

/// The margins of heat of a circuit, the worst of those whose passing is a danger.
struct HeatScreened {
    Screened screened{};
    int tail_not_assessed = 0;
};
[[nodiscard]] HeatScreened screen_heat(const Circuit& circuit, const Site& site,
                                       const Extremes& extremes);

/// What the heat of a bank allows, inverted once into watts of one element: above them the margin
/// `reason` fails.
struct HeatLimit {
    double element_w = std::numeric_limits<double>::infinity();
    std::string reason = "sheath temperature";
};
/// Of a circuit with nothing but its bank, devices, store and, where no wiring changes it, the run
/// at the element. With a store no margin of its heat reads the site.
[[nodiscard]] HeatLimit heat_limit(const Circuit& circuit);

/// How many margins of bank, sheath and store lack data, without a store of the tail too; the power
/// does not matter.
[[nodiscard]] int lacking_of_bank(const Circuit& circuit, const Site& site);

}  // namespace heatmatch
