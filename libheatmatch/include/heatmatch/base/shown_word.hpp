#pragma once

#include <span>
#include <string>
#include <string_view>

#include "heatmatch/base/choice.hpp"

namespace heatmatch {

/// A word of a choice as it is in data, and as people read it.
struct ShownWord {
    std::string_view word{};
    std::string_view shown{};
};

/// Words that are shown otherwise: spelling, abbreviations and terms of the trade. A file, an
/// error that lists what may be written, and Python have the word of the data.
[[nodiscard]] std::span<const ShownWord> shown_words();

/// The shown word; a word that is not among these unchanged.
[[nodiscard]] std::string shown_word(std::string_view word);
/// The same of a choice; empty where nothing is chosen.
[[nodiscard]] inline std::string shown_choice(const auto& kind) {
    return shown_word(word_of(kind));
}

}  // namespace heatmatch
