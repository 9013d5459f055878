#pragma once

#include <cstddef>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/operation/diagnosis/diagnosis.hpp"

namespace heatmatch {

/// The weight of an explanation whose score lies that far above the best: `exp(-behind/2)`, no less
/// than if every row of readings had been misread.
[[nodiscard]] double carried_weight(double behind, std::size_t rows);

/// What is said where one row is all there is.
[[nodiscard]] Sentence one_reading_said();

/// Weights that add up to one, equal among those that the readings do not tell apart.
void share_weights(Diagnosis& diagnosis);

}  // namespace heatmatch
