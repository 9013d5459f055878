#pragma once

#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// Margins of every run of wire: cold voltage, current by the code, insulation, plating, joints,
/// sunlight, wet places and permitted uses. Assessed with the short-circuit current at the highest
/// irradiance. Each run has the same margins, whatever is known of it.
[[nodiscard]] std::vector<Margin> run_margins(const Circuit& circuit, const Site& site);
/// Margins of one run of the circuit.
[[nodiscard]] std::vector<Margin> run_margins(const Circuit& circuit, const Site& site,
                                              const RunParts& run);

/// Whether the kind of its wire is permitted where the run lies, apart from any raceway: false
/// where the kind is unknown. Used to choose the wire of a run.
[[nodiscard]] bool wire_may_lie(const Circuit& circuit, const Site& site, const RunParts& run);

}  // namespace heatmatch
