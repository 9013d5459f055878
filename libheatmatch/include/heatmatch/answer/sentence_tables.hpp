#pragma once

#include <span>
#include <string_view>

#include "heatmatch/base/sentence.hpp"

namespace heatmatch {

/// The tables of sentences of every room, lowest floor first.
[[nodiscard]] std::span<const std::span<const Template>> sentence_tables();

/// The line of any table with that id; null if there is none.
[[nodiscard]] const Template* find_template(std::string_view id);

}  // namespace heatmatch
