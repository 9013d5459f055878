#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace heatmatch {

/// One record of a CSV text and its first line, counted from 1.
struct CsvRecord {
    std::size_t line = 0;
    std::vector<std::string> cells;
};

/// Splits CSV according to RFC 4180; a byte-order mark and both line endings are accepted. Throws
/// InvalidInput for a quote that is never closed, naming its line.
[[nodiscard]] std::vector<CsvRecord> read_csv(std::string_view text, std::string_view origin);

}  // namespace heatmatch
