#pragma once

#include <string>
#include <string_view>

namespace heatmatch {

/// Whether a text is well-formed UTF-8 (RFC 3629) without control characters other than tab and
/// line ends.
[[nodiscard]] bool is_plain_text(std::string_view text);

/// A text for a message: what is no plain text, every line end, and every mark that a terminal or a
/// page obeys and does not show, is written out as `\\x1b` or `\\u202e`.
[[nodiscard]] std::string plain_line(std::string_view text);

}  // namespace heatmatch
