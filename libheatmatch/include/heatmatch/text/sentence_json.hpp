#pragma once

#include <string>
#include <string_view>

#include "heatmatch/base/sentence.hpp"

namespace heatmatch {

/// A sentence as JSON, by id and arguments:
/// `{"id": "tail.terminal", "with": {"place": [{"id": "tail.buried"}], "run": "hot tail",
/// "air": {"value": 45.0, "unit": "°C", "digits": 3}}}`.
[[nodiscard]] std::string sentence_to_json(const Sentence& sentence);

/// The line of a table with that id; null if there is none.
using FindTemplate = const Template* (*)(std::string_view id);

/// Reads it back. Throws InvalidInput for broken JSON, an id that `find` does not return, an
/// unknown unit, and arguments that are not those of the line.
[[nodiscard]] Sentence sentence_from_json(std::string_view text, FindTemplate find);

}  // namespace heatmatch
