#pragma once

#include <string>
#include <string_view>

#include "heatmatch/setting/installation.hpp"

namespace heatmatch {

/// Reads an installation, version 1. Throws InvalidInput naming the place, field, value, range and
/// remedy; `origin` (a path, or `installation`) opens the messages.
[[nodiscard]] Installation installation_from_json(std::string_view text,
                                                  std::string_view origin = "installation");

/// The installation as JSON; unknown values are omitted, and equal installations give equal bytes.
[[nodiscard]] std::string installation_to_json(const Installation& installation);

}  // namespace heatmatch
