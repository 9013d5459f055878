#pragma once

#include "heatmatch/match/margins/margin.hpp"
#include "heatmatch/parts/wire.hpp"

namespace heatmatch {

/// One more sentence behind what a margin says.
void add(Margin& margin, Sentence more);

/// What a metal stands before it oxidises: `tin-plated copper oxidises above {limit} ...`.
[[nodiscard]] Sentence metal_limit(const Wire& wire);

}  // namespace heatmatch
