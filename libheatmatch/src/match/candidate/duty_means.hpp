#pragma once

#include <string>
#include <vector>

#include "heatmatch/match/candidate/code_duties.hpp"

/// What a circuit has for a duty of a code.
namespace heatmatch {

struct MeansHere {
    DutyMeans met = DutyMeans::nobody_stated;
    Sentence here{};
    std::vector<std::string> devices{};
    std::vector<std::string> state{};
};

/// A device that finds that fault; with `must_open` it has to make something open too.
[[nodiscard]] MeansHere means_to_find(const Circuit& circuit, const Site& site, DetectedFault fault,
                                      bool must_open);
/// A switch that opens the circuit by hand, here as both codes or one of them ask.
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
