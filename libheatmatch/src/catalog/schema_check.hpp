#pragma once

#include <string>

namespace SQLite {
class Database;
}

namespace heatmatch {

/// Compares the schema of a file with what this version and older ones create. Throws CatalogError
/// for a trigger, a view, an index, a foreign table or column, or a table that is not written as
/// ours: SQLite would run what it says at every change or every look.
void check_schema(SQLite::Database& database, const std::string& path);

}  // namespace heatmatch
