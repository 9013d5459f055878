#pragma once

#include "reading_fit.hpp"

#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/candidate/candidate.hpp"

namespace heatmatch {

/// The sound circuit with what is not known of it; what had to be assumed goes to the remarks.
[[nodiscard]] FitProblem sound_problem(const Circuit& circuit, Sentences& remarks);

/// Every explanation that this circuit allows, `as_expected` first; not that of the store. Where
/// the ohms of an element were read, each fault of an element comes with that one, with a sound one
/// and, read more than once, with either.
[[nodiscard]] std::vector<FaultVariant> fault_variants(const Circuit& circuit,
                                                       const FitProblem& problem);

/// Sections with a bypass diode that a panel is taken to have where its label does not tell: three
/// for crystalline silicon, one for thin film; common practice, no source.
[[nodiscard]] int sections_of(const Panel& panel);

}  // namespace heatmatch
