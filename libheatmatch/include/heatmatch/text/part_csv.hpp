#pragma once

#include <string_view>
#include <vector>

#include "heatmatch/parts/parts.hpp"
#include "heatmatch/text/part_json.hpp"

namespace heatmatch {

/// Parts of one kind from CSV (RFC 4180) whose header names fields: numbers with or without a
/// unit, yes/no or true/false for flags, JSON for tables and lists, nothing for unknown. A row
/// that cannot be used goes to `refused` with its line, or with its number among the records where
/// `number_records` is set (the header is 1). Throws InvalidInput for an unknown column.
[[nodiscard]] CatalogText parts_from_csv(PartKind kind, std::string_view text,
                                         std::string_view origin, std::vector<RefusedRow>& refused,
                                         bool number_records = false);

}  // namespace heatmatch
