#pragma once

#include "heatmatch/answer/table.hpp"
#include "heatmatch/operation/meter/meter_sheet.hpp"

namespace heatmatch {

/// The expected readings, a row for each sun and cell temperature; its title is the circuit.
[[nodiscard]] Table sheet_table(const MeterSheet& sheet);
/// Title over a text, over a table without room for a legend, and on a page of that circuit alone.
[[nodiscard]] Sentence sheet_title(const MeterSheet& sheet);
[[nodiscard]] Sentence sheet_caption(const MeterSheet& sheet);
[[nodiscard]] Sentence sheet_plain_title();

}  // namespace heatmatch
