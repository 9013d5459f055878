#pragma once

#include <span>
#include <string_view>

namespace heatmatch {

/// What every report of a circuit must show, one sentence each. Common practice; local codes
/// decide.
[[nodiscard]] std::span<const std::string_view> cautions();

}  // namespace heatmatch
