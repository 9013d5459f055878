#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "heatmatch/base/field.hpp"
#include "heatmatch/parts/parts.hpp"

namespace heatmatch {

/// Content of a catalog file in JSON: `{"heatmatch_catalog": 1, "panels": [{...}], ..., "removed":
/// {"panels": ["id"]}}`.
struct CatalogText {
    std::vector<Part> rows{};          //!< by kind, in the order of the file
    std::vector<std::size_t> lines{};  //!< line of each row; empty if not from a file
    std::vector<std::pair<PartKind, std::string>> removed{};
};

/// A row of a file that cannot be used, with the reason.
struct RefusedRow {
    std::size_t line = 0;  //!< of the file, counted from 1
    std::string id{};
    std::string reason{};
};

/// One part as a JSON object; unknown fields are omitted, numbers are shortest exact decimals.
[[nodiscard]] std::string part_to_json(const Part& part, int indent = 2);

/// One part from a JSON object. Numbers may be texts with a unit. Throws InvalidInput for broken
/// JSON (with line and column), unknown keys (naming the nearest) and unusable values.
[[nodiscard]] Part part_from_json(PartKind kind, std::string_view text);

/// A whole catalog file; equal parts give equal bytes.
[[nodiscard]] std::string catalog_to_json(const CatalogText& catalog);

/// Reads a catalog file. A row that cannot be used throws an InvalidInput naming its line. With
/// `refused` it is added there instead, and reading continues. `origin` starts the messages.
[[nodiscard]] CatalogText catalog_from_json(std::string_view text, std::string_view origin,
                                            std::vector<RefusedRow>* refused = nullptr);

/// A list, table or map of a field as JSON text, for the columns of a database.
[[nodiscard]] std::string value_to_json(const Field& field, const Value& value);
[[nodiscard]] Value value_from_json(const Field& field, std::string_view text,
                                    std::string_view part);

}  // namespace heatmatch
