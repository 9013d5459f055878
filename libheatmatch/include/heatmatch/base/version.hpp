#pragma once

#include <string_view>

namespace heatmatch {

/// Version of the library, `0.1.0`.
[[nodiscard]] std::string_view library_version();

}  // namespace heatmatch
