#pragma once

#include <string>
#include <string_view>

#include "heatmatch/text/file_writer.hpp"

namespace heatmatch {

/// The whole content of a file. Throws FileError naming the path.
[[nodiscard]] std::string read_text_file(const std::string& path);
/// Writes a file completely or not at all, by a FileWriter. Throws FileError naming the path.
void write_text_file(const std::string& path, std::string_view text,
                     const WriteOptions& options = {});

}  // namespace heatmatch
