#pragma once

#include "heatmatch/operation/meter_sheet.hpp"

namespace heatmatch {

/// Fills the checks of a sheet whose rows are there, and what is not known for them.
void add_meter_checks(MeterSheet& sheet, const Candidate& candidate,
                      const MeterSheetOptions& options);

/// Sections of a panel that have a bypass diode of their own; nothing if it is not known.
[[nodiscard]] std::optional<int> bypass_sections(const Panel& panel);

}  // namespace heatmatch
