#pragma once

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/plan/plan.hpp"

namespace heatmatch {

/// A plan in one line of the first screen: heat a day, circuits, bill, highest volts at the record
/// low, and the command that prints it. Null: no plan was made; only the command.
[[nodiscard]] Sentence plan_line(const Plan* plan);

}  // namespace heatmatch
