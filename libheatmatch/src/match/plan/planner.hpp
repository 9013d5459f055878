#pragma once

#include "plan_answers.hpp"

#include <utility>
#include <vector>

#include "heatmatch/match/plan/plan.hpp"

namespace heatmatch {

/// Makes a plan from searches under several requirements.
class Planner {
  public:
    Planner(PlanTask& task, const Parts& catalog, const RankOptions& options);

    Plan make();

  private:
    /// One search; each has a part of the progress that is left, because their number is not known.
    PlanOutcome search(const PlanRequirement& needed);
    /// A search of few checks, for what is told beside the plan.
    PlanOutcome search_briefly(PlanRequirement needed);
    /// As in a recommendation, a plan with a danger by an unstated fact only where none is without,
    /// as far as a short search finds one.
    void prefer_careful(double headroom, PlanOutcome& found);
    [[nodiscard]] PlanRequirement required(double headroom) const;
    PlanOutcome at(double headroom, double least_kwh = 0.0);
    /// Decides among the best five and the chosen plan by their heat as an assessment sums it, not
    /// by the curves of the search.
    void sum_again(PlanOutcome& found);
    /// The circuits of the search, as an assessment describes them.
    void take(const PlanOutcome& found);
    [[nodiscard]] Amount a_day(double kwh) const;
    [[nodiscard]] Sentence price_said(double price) const;
    [[nodiscard]] PlanOffer offer_of(const FoundPlan& found);
    void offer_headroom(double level, const PlanOutcome& outcome);
    /// Plans below the voltages from which more duties apply.
    void offer_volts();
    [[nodiscard]] PlanOffer offer_below(double volts, const PlanOutcome& outcome);
    /// Of any single panel [V].
    [[nodiscard]] double lowest_cold_v() const;
    /// At least its own heat, which is summed anew: to 1e-3 of the curves of the search.
    void add_bounds(const PlanOutcome& found);
    void add_single();
    /// One circuit of one group, and all panels in one array.
    void add_usual();
    void add_idle();
    /// Tells what is possible with another requirement; false where nothing is.
    bool offer_without(const Sentence& goal, const PlanRequirement& needed);
    /// The same with each goal alone as little less strict as is needed.
    bool offer_single_goals(double base);
    /// No plan: the reason, and the nearest that is possible.
    void tell_nearest(double base, const PlanOutcome& found);
    /// Facts without which circuits cannot be judged, those of the most circuits first.
    [[nodiscard]] Sentences missing_facts() const;
    void add_remarks();

    PlanTask& task_;
    const Parts& catalog_;
    const RankOptions& options_;
    CircuitPool pool_;
    PlanSearch search_;
    Goals goals_;
    PanelCounts all_{};
    FoundPlan chosen_{};
    bool careful_ = false;  //!< a plan exists without a danger by an unstated fact
    bool proven_ = true;
    double reached_ = 0.0;  //!< share of the progress
    Plan plan_{};
};

}  // namespace heatmatch
