#pragma once

#include <string_view>
#include <vector>

#include "heatmatch/parts/panel.hpp"
#include "heatmatch/text/part_json.hpp"

namespace heatmatch {

/// Panels of the public module-rating list: three header rows (names, units, types), one module a
/// line. Label values become the panel's fields, the published six parameters its `listed_fit`.
/// Ids are made from the names. A row that cannot be used goes to `refused` with its line.
/// Throws InvalidInput if the header lacks a column that is needed. @cite cec-module-list
[[nodiscard]] std::vector<Panel> panels_from_module_csv(std::string_view text,
                                                        std::string_view origin,
                                                        std::vector<RefusedRow>& refused);

}  // namespace heatmatch
