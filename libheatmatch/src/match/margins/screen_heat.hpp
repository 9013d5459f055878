#pragma once

#include <limits>
#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/limits.hpp"

namespace heatmatch {

[[nodiscard]] int count_not_assessed(const std::vector<Margin>& margins);

/// The heat margins of a circuit: the worst of those whose exceedance is a danger.
struct HeatScreened {
    Screened screened{};
    int tail_not_assessed = 0;
};
[[nodiscard]] HeatScreened screen_heat(const Circuit& circuit, const Site& site,
                                       const Extremes& extremes);

/// Heat limit of a bank as the power of one element: above it the margin `reason` fails.
struct HeatLimit {
    double element_w = std::numeric_limits<double>::infinity();
    std::string reason = "sheath temperature";
};
/// For a circuit with only its bank, devices, store and, where no wiring changes it, the run at the
/// element. With a store none of its heat margins depends on the site. At most `most_w`, if that is
/// known to be lower; then a single evaluation suffices.
[[nodiscard]] HeatLimit heat_limit(const Circuit& circuit,
                                   double most_w = std::numeric_limits<double>::infinity());

/// Whether any of the margins is a danger with unstated facts in their worst case.
[[nodiscard]] bool may_be_danger(const std::vector<Margin>& margins);

/// Whether an unstated fact may make the bank in its store a danger at any power.
[[nodiscard]] bool doubtful_bank(const Circuit& circuit, const Site& site);

/// Number of margins of bank, sheath and store that lack data, without a store also of the tail;
/// independent of power.
[[nodiscard]] int lacking_of_bank(const Circuit& circuit, const Site& site);

}  // namespace heatmatch
