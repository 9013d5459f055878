#pragma once

#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// Margins of every run of wire: cold voltage, code current, insulation, plating, joints and
/// sunlight. Judged with the short-circuit current in the brightest sun.
[[nodiscard]] std::vector<Margin> run_margins(const Circuit& circuit, const Site& site);

}  // namespace heatmatch
