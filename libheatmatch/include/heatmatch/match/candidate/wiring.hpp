#pragma once

#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/limits.hpp"

namespace heatmatch {

/// A run of that wire, with its insulation and joints.
[[nodiscard]] RunParts parts_of_run(const Parts& parts, const WireRun& run, const Wire& wire);

/// The wires of a catalog, the cheapest first; those of unknown price last.
[[nodiscard]] std::vector<const Wire*> wires_by_price(const Parts& parts);

/// The runs of an installation with their parts. A run that says `choose` gets the cheapest wire of
/// the catalog of a kind that may lie there, whose margins in that run all come out `none` (but for
/// those of its joints and of the metal around it) and that takes at most 2 % of the
/// array's volts, or the one that takes least where all take more; no wire where none does, or
/// where the temperature around it is not stated. The heat of an element is not known here: see
/// lay_for_heat().
[[nodiscard]] std::vector<RunParts> lay_runs(const Parts& parts, const Installation& installation,
                                             const PanelInService& panel, Hookup panels,
                                             Hookup bank);

/// Whether the wire of the run at the element is chosen for the heat that comes down the element:
/// it says `choose`, and a store is described.
[[nodiscard]] bool chooses_for_heat(const Installation& installation);

/// Lays the wire of that run anew, for a circuit with its bank and its heat: the cheapest of the
/// catalog that comes near no limit, neither in its run nor at the terminal, and takes at most 2 %
/// of the array's volts; where all come near one, the one with the most headroom; as it was laid
/// where none does. Where the temperature around it is not stated, it is chosen as if it were
/// `careful_air_c` there; its margins stay those of a run of which nothing is stated.
void lay_for_heat(Circuit& circuit, const Parts& parts, const Installation& installation,
                  const Extremes& bright);

/// The devices of an installation with their controls.
[[nodiscard]] std::vector<PlacedDevice> place_devices(const Parts& parts,
                                                      const Installation& installation);

}  // namespace heatmatch
