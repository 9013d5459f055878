#pragma once

#include "heatmatch/answer/table.hpp"
#include "heatmatch/operation/diagnosis/diagnosis.hpp"

namespace heatmatch {

/// All explanations, a row each, those that cannot be told apart marked.
[[nodiscard]] Table diagnosis_table(const Diagnosis& diagnosis);

/// What the explanations of the first group say, and what to measure next.
[[nodiscard]] Sentences diagnosis_sentences(const Diagnosis& diagnosis);

/// What stands before the evidence for the best one; empty where there is none.
[[nodiscard]] Sentence evidence_title(const Diagnosis& diagnosis);
/// What stands before all that readings of a circuit tell.
[[nodiscard]] Sentence readings_title(const Circuit& circuit);

}  // namespace heatmatch
