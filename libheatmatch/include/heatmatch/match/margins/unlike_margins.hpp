#pragma once

#include <vector>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/limits.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// The margins of the bank of a circuit and of its heat, for a bank of unlike elements: those of an
/// element once for each, those of bank, limits and store as the worst of all elements.
struct UnlikeMargins {
    std::vector<Margin> bank{};  //!< as bank_margins()
    std::vector<Margin> heat{};  //!< as those of sheath, limits, survivors, tail and store
};
[[nodiscard]] UnlikeMargins unlike_margins(const Circuit& circuit, const Site& site,
                                           const Extremes& bright);

}  // namespace heatmatch
