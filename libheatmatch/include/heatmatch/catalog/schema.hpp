#pragma once

#include <string>
#include <vector>

namespace heatmatch {

/// Version of the tables this library writes (`PRAGMA user_version`).
inline constexpr int schema_version = 6;
/// Marks a SQLite file as a heatmatch catalog (`PRAGMA application_id`, the letters `hmat`).
inline constexpr int catalog_application_id = 0x686d6174;

/// The statements that create an empty catalog file: one STRICT table for each kind, generated from
/// its field table with named CHECK constraints, and the tables of removals and history.
[[nodiscard]] std::vector<std::string> schema_statements();

}  // namespace heatmatch
