#pragma once

#include <vector>

#include "heatmatch/match/circuit.hpp"

namespace heatmatch {

/// A run of that wire, with its insulation and joints.
[[nodiscard]] RunParts parts_of_run(const Parts& parts, const WireRun& run, const Wire& wire);

/// The runs of an installation with their parts. A run that says `choose` gets the cheapest wire of
/// the catalog whose margins in that run all come out `none` and that takes at most 2 % of the
/// array's volts, or the one that takes least where all take more; no wire where none does, or
/// where the temperature around it is not stated.
[[nodiscard]] std::vector<RunParts> lay_runs(const Parts& parts, const Installation& installation,
                                             const PanelInService& panel, Hookup panels,
                                             Hookup bank);

/// The devices of an installation with their controls.
[[nodiscard]] std::vector<PlacedDevice> place_devices(const Parts& parts,
                                                      const Installation& installation);

}  // namespace heatmatch
