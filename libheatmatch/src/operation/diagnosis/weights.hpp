#pragma once

#include <cstddef>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/operation/diagnosis/diagnosis.hpp"

namespace heatmatch {

/// Weight of an explanation whose score is that far above the best: `exp(-behind/2)`, but at least
/// the probability that every row was misread.
[[nodiscard]] double carried_weight(double behind, std::size_t rows);

/// Remark where there is only one row.
[[nodiscard]] Sentence one_reading_said();

/// Weights that add up to one, equal among explanations that the readings do not distinguish.
void share_weights(Diagnosis& diagnosis);

}  // namespace heatmatch
