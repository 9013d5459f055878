#pragma once

#include <string>

namespace SQLite {
class Database;
}

namespace heatmatch {

/// Compares the schema of a file with those of this version and older ones. Throws CatalogError for
/// a trigger, a view, an index, an unknown table or column, or a differing table definition: SQLite
/// would execute it at every change or read.
void check_schema(SQLite::Database& database, const std::string& path);

}  // namespace heatmatch
