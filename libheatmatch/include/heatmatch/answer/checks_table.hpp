#pragma once

#include "heatmatch/answer/table.hpp"
#include "heatmatch/operation/meter/meter_sheet.hpp"

namespace heatmatch {

/// What to measure and to look at, a row each: how, what to expect, what less or more means.
[[nodiscard]] Table checks_table(const MeterSheet& sheet);

/// One of them as lines: what to expect, how to read it, what less and more mean.
[[nodiscard]] Sentences check_lines(const MeterCheck& check);

/// What a sheet could not tell, each as a sentence of its own.
[[nodiscard]] Sentences not_known_sentences(const MeterSheet& sheet);

}  // namespace heatmatch
