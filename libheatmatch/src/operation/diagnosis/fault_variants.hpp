#pragma once

#include "reading_fit.hpp"

#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/candidate/candidate.hpp"

namespace heatmatch {

/// The circuit without a fault, with its unknowns; assumptions are added to the remarks.
[[nodiscard]] FitProblem sound_problem(const Circuit& circuit, Sentences& remarks);

/// Every explanation possible for this circuit, `as_expected` first, without that of the store.
/// Where the resistance of an element was read, each fault of an element has variants in which that
/// element is the faulty one, a sound one and, for several readings, either.
[[nodiscard]] std::vector<FaultVariant> fault_variants(const Circuit& circuit,
                                                       const FitProblem& problem);

/// Number of sections with a bypass diode assumed for a panel whose label does not state it: three
/// for crystalline silicon, one for thin film; common practice, no source.
[[nodiscard]] int sections_of(const Panel& panel);

}  // namespace heatmatch
