#pragma once

#include "plan_search.hpp"

#include <vector>

#include "heatmatch/match/candidate/candidate.hpp"

namespace heatmatch {

/// What the goals require of a plan at that headroom.
[[nodiscard]] PlanRequirement requirement_of(const Goals& goals, double headroom);

/// The circuits as assess_circuits() assesses them, with bills that count as owned only what the
/// installation owns.
[[nodiscard]] std::vector<Candidate> planned_candidates(
    const PlanTask& task, const Parts& catalog, const std::vector<ExistingCircuit>& circuits);

/// Why these panels have no circuit of their own beside a plan.
[[nodiscard]] Sentence why_idle(PlanSearch& search, const FoundPlan& plan,
                                const PanelCounts& panels, double headroom, int circuits_max);

}  // namespace heatmatch
