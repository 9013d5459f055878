#pragma once

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/plan/plan.hpp"

namespace heatmatch {

/// A plan as one more row of the other ways on the first screen: name, circuits and command, heat a
/// day, bill, headroom, highest volts at the record low. Empty without circuits.
[[nodiscard]] Sentences plan_row(const Plan& plan);

}  // namespace heatmatch
