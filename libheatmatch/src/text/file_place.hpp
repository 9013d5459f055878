#pragma once

#include <string>

namespace heatmatch {

/// Target of a path: symbolic links followed, also one to a missing file. Throws
/// std::filesystem::filesystem_error.
[[nodiscard]] std::string followed_path(const std::string& path);

/// The beginning of a regular file. Throws std::system_error.
[[nodiscard]] std::string beginning_of(const std::string& path);

/// Whether a path is, or would be, a part of an SQLite database: the file, recognized by its
/// beginning, or its log, index or journal, recognized by name or beginning.
[[nodiscard]] bool is_of_database(const std::string& path);

}  // namespace heatmatch
