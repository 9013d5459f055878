#pragma once

#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/limits.hpp"

namespace heatmatch {

/// A run of that wire, with its insulation and joints.
[[nodiscard]] RunParts parts_of_run(const Parts& parts, const WireRun& run, const Wire& wire);

/// The wires of a catalog, cheapest first; those with an unknown price last.
[[nodiscard]] std::vector<const Wire*> wires_by_price(const Parts& parts);

/// The runs of an installation with their parts, for the array and the hook-up of the bank of a
/// circuit. A run with wire `choose` gets the cheapest wire of
/// the catalog of a permitted kind for which all margins of the run are `none` (except those of its
/// joints and of metal around it) and whose voltage drop is at most 2 % of the array voltage. If
/// all suitable wires drop more, it gets the one with the smallest drop. It gets no wire where none
/// is suitable, or where the temperature around it is not stated. The heat of an element is not
/// known here: see lay_for_heat().
[[nodiscard]] std::vector<RunParts> lay_runs(const Parts& parts, const Installation& installation,
                                             const Circuit& array);

/// Whether the wire of the run at the element is chosen for the heat conducted along the element:
/// its wire is `choose`, and a store is described.
[[nodiscard]] bool chooses_for_heat(const Installation& installation);

/// Chooses the wire of that run again, for a circuit with its bank and its heat: the cheapest of
/// the catalog that is near no limit, in its run and at the terminal, with a voltage drop of at
/// most 2 % of the array voltage. If all are near a limit, the one with the most headroom; if none
/// is suitable, the wire stays. Where the temperature around it is not stated, the choice assumes
/// `careful_air_c`; its margins remain those of a run with nothing stated.
void lay_for_heat(Circuit& circuit, const Parts& parts, const Installation& installation,
                  const Extremes& bright);

/// The devices of an installation with their controls.
[[nodiscard]] std::vector<PlacedDevice> place_devices(const Parts& parts,
                                                      const Installation& installation);

}  // namespace heatmatch
