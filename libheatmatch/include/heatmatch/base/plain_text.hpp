#pragma once

#include <string>
#include <string_view>

namespace heatmatch {

/// Whether a text is well-formed UTF-8 (RFC 3629) without control characters other than tab and
/// line ends.
[[nodiscard]] bool is_plain_text(std::string_view text);

/// A text for a message: what is no plain text, and every line end, becomes a question mark.
[[nodiscard]] std::string plain_line(std::string_view text);

}  // namespace heatmatch
