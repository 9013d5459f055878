#pragma once

#include <optional>
#include <string>

#include "heatmatch/parts/parts.hpp"

namespace SQLite {
class Database;
}

namespace heatmatch {

/// One column of a kind's table, with its named CHECK.
[[nodiscard]] std::string column_definition(const PartKindInfo& info, const Field& field);

/// Adds columns that a file of an older version lacks. They are null until edited, so a field added
/// in a later version must not be required.
void add_missing_columns(SQLite::Database& database);

/// All rows of a kind's table, by id. Throws CatalogError naming an unreadable row.
[[nodiscard]] std::vector<Part> read_rows(SQLite::Database& database, const PartKindInfo& info);
[[nodiscard]] std::optional<Part> read_row(SQLite::Database& database, const PartKindInfo& info,
                                           const std::string& id);
/// Inserts or replaces one row.
void write_row(SQLite::Database& database, const Part& part);
void delete_row(SQLite::Database& database, const PartKindInfo& info, const std::string& id);

}  // namespace heatmatch
