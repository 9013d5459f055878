#pragma once

#include <string>
#include <string_view>

namespace heatmatch {

/// The whole content of a file. Throws FileError naming the path.
[[nodiscard]] std::string read_text_file(const std::string& path);
/// Writes a file through a neighbour that is renamed, so that a failure leaves the old one whole.
/// Throws FileError naming the path.
void write_text_file(const std::string& path, std::string_view text);

}  // namespace heatmatch
