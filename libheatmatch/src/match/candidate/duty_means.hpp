#pragma once

#include <string>
#include <vector>

#include "heatmatch/match/candidate/code_duties.hpp"

/// How a circuit meets a duty of a code.
namespace heatmatch {

struct MeansHere {
    DutyMeans met_by = DutyMeans::nobody_stated;
    Sentence here{};
    std::vector<std::string> devices{};
    std::vector<std::string> missing{};
};

/// A device that detects that fault; with `must_open` it must also open a device.
[[nodiscard]] MeansHere means_to_find(const Circuit& circuit, const Site& site, DetectedFault fault,
                                      bool must_open);
/// A switch that opens the circuit by hand, as required by both codes or one of them.
[[nodiscard]] MeansHere means_to_disconnect(const Circuit& circuit, const Site& site,
                                            bool all_conductors);
/// A contactor that opens when its supply is lost: the only evidence of a rapid shutdown in the
/// data.
[[nodiscard]] MeansHere means_to_shut_down(const Circuit& circuit, const Site& site);
[[nodiscard]] MeansHere means_to_guard(const Circuit& circuit, const Site& site);
[[nodiscard]] MeansHere means_to_bond(const Circuit& circuit, const Site& site);
/// Metal around every wire that may lie inside a building; `inside` are those runs.
[[nodiscard]] MeansHere means_to_enclose(const Circuit& circuit,
                                         const std::vector<const RunParts*>& inside);

}  // namespace heatmatch
