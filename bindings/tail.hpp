#pragma once

#include "state.hpp"

#include "heatmatch/match/margins/tail_margins.hpp"

namespace heatmatch::python {

/// A hot tail with what it was computed from, so that it can be pickled.
struct CandidateTail {
    Circuit circuit{};
    Extremes bright{};
    TailHeat tail{};
    TailTemperatures at{};
};

/// Nothing where its temperatures are not known.
[[nodiscard]] std::optional<CandidateTail> candidate_tail(Circuit circuit, const Extremes& bright);

}  // namespace heatmatch::python
