#pragma once

#include "reading_fit.hpp"

#include <vector>

#include "heatmatch/base/sentence.hpp"

namespace heatmatch {

/// The numbers that an explanation has fitted, with their bands.
[[nodiscard]] std::vector<FittedValue> fitted_values(const FaultVariant& variant,
                                                     const VariantFit& fit);

/// One plain sentence or two: what it means, with its numbers, and what to do.
[[nodiscard]] Sentence fault_sentence(const FaultVariant& variant, const VariantFit& fit,
                                      const Circuit& circuit, const Parts* parts);

/// What was read against what an explanation predicts: volts over amperes first.
[[nodiscard]] Sentences evidence_of(const FitProblem& problem, const VariantFit& fit);

/// Readings more than five errors off what an explanation predicts, which hardly count in its fit;
/// empty if there are none.
[[nodiscard]] Sentence wild_readings(const FitProblem& problem, const VariantFit& fit);

}  // namespace heatmatch
