#pragma once

#include <vector>

#include "heatmatch/match/circuit/opening.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// What opens the whole circuit by hand, and as a limit, by opens(). What does neither makes
/// neither better: the worst of what a hand may take for a disconnect speaks.
[[nodiscard]] std::vector<Margin> opening_margins(const Circuit& circuit, const OpeningSite& site);

}  // namespace heatmatch
