#pragma once

#include <vector>

#include "heatmatch/match/circuit.hpp"
#include "heatmatch/match/limits.hpp"

namespace heatmatch {

[[nodiscard]] int count_not_assessed(const std::vector<Margin>& margins);

/// The worst of the margins of heat whose passing is a danger, as evaluate() has them.
[[nodiscard]] Screened screen_heat(const Circuit& circuit, const Extremes& extremes);

/// How many margins of bank, sheath and store lack data; the power does not matter.
[[nodiscard]] int lacking_of_bank(const Circuit& circuit, const Site& site);

}  // namespace heatmatch
