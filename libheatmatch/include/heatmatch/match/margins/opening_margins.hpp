#pragma once

#include <vector>

#include "heatmatch/match/circuit/opening.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// Devices that open the whole circuit by hand, and as a limit, according to opens(). A device that
/// does neither does not improve either margin; the result is that of the worst device that a user
/// could mistake for a disconnect.
[[nodiscard]] std::vector<Margin> opening_margins(const Circuit& circuit, const OpeningSite& site);

}  // namespace heatmatch
