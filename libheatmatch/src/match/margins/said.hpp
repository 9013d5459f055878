#pragma once

#include "heatmatch/match/margins/margin.hpp"
#include "heatmatch/parts/wire.hpp"

namespace heatmatch {

/// Appends a sentence to that of a margin.
void add(Margin& margin, Sentence more);

/// Oxidation limit of a metal: `tin-plated copper oxidizes above {limit} ...`.
[[nodiscard]] Sentence metal_limit(const Wire& wire);

}  // namespace heatmatch
