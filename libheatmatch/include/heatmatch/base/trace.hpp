#pragma once

#include <string>
#include <vector>

namespace heatmatch {

/// One step of an explanation: a formula in words, the same with the numbers put in, the result.
struct Step {
    std::string name{};     //!< what is computed, for example `element resistance, typical`
    std::string formula{};  //!< `R = V² / P`
    std::string numbers{};  //!< `(120 V)² / 1000 W`; empty for a value that was given
    double value = 0.0;
    std::string unit{};
    std::string source{};  //!< cite key, or where a given value comes from
};

using Trace = std::vector<Step>;

}  // namespace heatmatch
