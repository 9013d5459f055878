#pragma once

#include <span>

#include "heatmatch/answer/table.hpp"
#include "heatmatch/match/candidate/wire_check.hpp"

namespace heatmatch {

/// Every run by the zone it lies in, from the sun to the hot end, with all that is on it; columns
/// that say nothing of any run are left out.
[[nodiscard]] Table wiring_list(const Circuit& circuit, std::span<const WireCheck> checks);

/// Why each run is judged so, and what is placed on no run.
[[nodiscard]] Sentences wiring_reasons(const Circuit& circuit, std::span<const WireCheck> checks);

}  // namespace heatmatch
