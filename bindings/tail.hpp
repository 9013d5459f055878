#pragma once

#include "state.hpp"

#include "heatmatch/match/margins/tail_margins.hpp"

namespace heatmatch::python {

/// A hot tail with its inputs, for pickles.
struct CandidateTail {
    Circuit circuit{};
    Extremes bright{};
    TailHeat tail{};
    TailTemperatures at{};
};

/// Empty where its temperatures are not known.
[[nodiscard]] std::optional<CandidateTail> candidate_tail(Circuit circuit, const Extremes& bright);

}  // namespace heatmatch::python
