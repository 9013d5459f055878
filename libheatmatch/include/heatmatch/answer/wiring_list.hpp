#pragma once

#include <span>

#include "heatmatch/answer/table.hpp"
#include "heatmatch/match/candidate/wire_check.hpp"

namespace heatmatch {

/// Every run by zone, from the panels to the elements, with the parts on it; columns that are empty
/// for every run are omitted.
[[nodiscard]] Table wiring_list(const Circuit& circuit, std::span<const WireCheck> checks);

/// Reason for each run's severity, and parts that are on no run.
[[nodiscard]] Sentences wiring_reasons(const Circuit& circuit, std::span<const WireCheck> checks);

}  // namespace heatmatch
