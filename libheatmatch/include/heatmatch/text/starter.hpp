#pragma once

#include <string_view>

#include "heatmatch/parts/parts.hpp"

namespace heatmatch {

/// The starter catalog, compiled into the library and read once; each kind sorted by id.
[[nodiscard]] const Parts& starter_parts();

/// The bibliography of the starter catalog as JSON: cite key -> title, publisher, year, place.
[[nodiscard]] std::string_view sources_json();

/// The demo installation, an invented seedling house, as JSON.
[[nodiscard]] std::string_view demo_installation_json();

}  // namespace heatmatch
