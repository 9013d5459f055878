#pragma once

#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"

namespace heatmatch {

/// One step of an explanation: the formula in words, the same with numbers, the result.
struct Step {
    Sentence name{};     //!< what is computed, for example `element resistance, typical`
    Sentence formula{};  //!< `R = V² / P`
    Sentence numbers{};  //!< `(120 V)² / 1000 W`; empty for a value that was given
    double value = 0.0;
    std::string unit{};
    Sentence source{};  //!< cite key, or the source of a given value
};

using Trace = std::vector<Step>;

}  // namespace heatmatch
