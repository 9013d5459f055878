#pragma once

#include "heatmatch/answer/table.hpp"
#include "heatmatch/operation/diagnosis/diagnosis.hpp"

namespace heatmatch {

/// All explanations, one row each; those that the readings do not separate are marked.
[[nodiscard]] Table diagnosis_table(const Diagnosis& diagnosis);

/// Meaning of the explanations in the first group, and what to measure next.
[[nodiscard]] Sentences diagnosis_sentences(const Diagnosis& diagnosis);

/// The same in short, for one reading: the verdict, the resistance as read, the explanations that
/// fit, what to measure next, and the remarks.
[[nodiscard]] Sentences short_diagnosis(const Diagnosis& diagnosis);
/// What volts and amperes at a bank say without a described circuit: resistance and power. Empty
/// without both, or without current.
[[nodiscard]] Sentence bank_reading(const Reading& reading);

/// Heading of the evidence for the best explanation; empty where there is none.
[[nodiscard]] Sentence evidence_title(const Diagnosis& diagnosis);
/// Heading of the results from readings of a circuit.
[[nodiscard]] Sentence readings_title(const Circuit& circuit);

}  // namespace heatmatch
