#pragma once

#include "heatmatch/answer/table.hpp"
#include "heatmatch/operation/meter/meter_sheet.hpp"

namespace heatmatch {

/// What to measure and inspect, one row each: how, what to expect, what a lower or higher value
/// means.
[[nodiscard]] Table checks_table(const MeterSheet& sheet);

/// One check as lines: what to expect, how to read it, what a lower and a higher value mean.
[[nodiscard]] Sentences check_lines(const MeterCheck& check);

/// What the sheet could not determine, one sentence each.
[[nodiscard]] Sentences not_known_sentences(const MeterSheet& sheet);

}  // namespace heatmatch
