#pragma once

#include <string>
#include <string_view>

namespace heatmatch {

/// Whether a text is well-formed UTF-8 (RFC 3629) without control characters other than tab and
/// line ends.
[[nodiscard]] bool is_plain_text(std::string_view text);

/// A text for a message. Malformed text, line ends, and invisible control characters of terminals
/// and pages are written as `\\x1b` or `\\u202e`.
[[nodiscard]] std::string plain_line(std::string_view text);

}  // namespace heatmatch
