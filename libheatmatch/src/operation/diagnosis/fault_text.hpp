#pragma once

#include "reading_fit.hpp"

#include <vector>

#include "heatmatch/base/sentence.hpp"

namespace heatmatch {

/// The fitted numbers of an explanation, with their bands.
[[nodiscard]] std::vector<FittedValue> fitted_values(const FaultVariant& variant,
                                                     const VariantFit& fit);

/// One or two plain sentences: meaning, with the numbers, and what to do.
[[nodiscard]] Sentence fault_sentence(const FaultVariant& variant, const VariantFit& fit,
                                      const Circuit& circuit, const Parts* parts);

/// Readings beside the predictions of an explanation: voltage over current first.
[[nodiscard]] Sentences evidence_of(const FitProblem& problem, const VariantFit& fit);

/// Readings more than five errors from the prediction, which hardly affect its fit; empty if there
/// are none.
[[nodiscard]] Sentence wild_readings(const FitProblem& problem, const VariantFit& fit);

}  // namespace heatmatch
