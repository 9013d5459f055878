#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <string_view>

namespace heatmatch {

/// The name of a margin in data, and the term of the trade by which it is shown.
struct ShownMargin {
    std::string_view name{};
    std::string_view shown{};
};

/// Characters of a shown name at most: tables have a column of this width.
inline constexpr std::size_t shown_margin_length = 28;

/// All margins, and the reasons other than a margin for which a ranking rejects. `Margin::name`
/// stays as it is in files, data frames and code; people read the shown name.
[[nodiscard]] std::span<const ShownMargin> shown_margins();

/// The shown name; a name that is not among these unchanged, such as one of a later version.
[[nodiscard]] std::string shown_margin_name(std::string_view name);

}  // namespace heatmatch
