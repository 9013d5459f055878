#pragma once

#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// Margins of every run of wire: cold voltage, current by the code, insulation, plating, joints,
/// sunlight, wet and where its kind may lie. Judged with the short-circuit current in the brightest
/// sun. Each run has the same ones, whatever is known of it.
[[nodiscard]] std::vector<Margin> run_margins(const Circuit& circuit, const Site& site);
/// Those of one run of the circuit.
[[nodiscard]] std::vector<Margin> run_margins(const Circuit& circuit, const Site& site,
                                              const RunParts& run);

/// Whether the kind of its wire may lie where the run lies, whatever it is laid in besides: no
/// where nothing is known of the kind. For the choice of a wire of a run of the circuit.
[[nodiscard]] bool wire_may_lie(const Circuit& circuit, const Site& site, const RunParts& run);

}  // namespace heatmatch
