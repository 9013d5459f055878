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
/// at the element. With a store no margin of its heat reads the site. No more than `most_w`, where
/// it is known to be less: that costs one look where it is as much.
[[nodiscard]] HeatLimit heat_limit(const Circuit& circuit,
                                   double most_w = std::numeric_limits<double>::infinity());

/// Whether any of the margins is a danger where unstated facts are as bad as they may be.
[[nodiscard]] bool may_be_danger(const std::vector<Margin>& margins);

/// Whether an unstated fact may make a danger of the bank in its store whatever it takes.
[[nodiscard]] bool doubtful_bank(const Circuit& circuit, const Site& site);

/// How many margins of bank, sheath and store lack data, without a store of the tail too; the power
/// does not matter.
[[nodiscard]] int lacking_of_bank(const Circuit& circuit, const Site& site);

}  // namespace heatmatch
