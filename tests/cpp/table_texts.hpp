#pragma once

#include <string>
#include <vector>

#include "heatmatch/answer/table.hpp"

using Texts = std::vector<std::string>;

/// The cells of a row with a bar between them.
inline std::string line(const heatmatch::Sentences& cells,
                        heatmatch::UnitSystem system = heatmatch::UnitSystem::si) {
    return heatmatch::text_of(cells, system, "|");
}

/// Something that is said, as a part of another sentence.
inline heatmatch::Sentence words(const char* text) {
    return heatmatch::sentence_of(heatmatch::Name{text});
}
