#pragma once

#include <string>

#include <doctest/doctest.h>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/sentence.hpp"
#include "heatmatch/parts/parts.hpp"

/// The message with which an action is refused by an error of that kind, or `(accepted)`.
template <class Kind = heatmatch::Error, class Action>
std::string refusal_of(Action action) {
    try {
        action();
    } catch (const Kind& error) {
        return error.what();
    }
    return "(accepted)";
}

/// The message with which a part is refused, or `(accepted)`.
inline std::string part_refusal(const heatmatch::Part& part) {
    return refusal_of<heatmatch::InvalidInput>([&part] { heatmatch::check_part(part); });
}

/// The message with which a word of a field is refused, or `(accepted)`.
inline std::string word_refusal(heatmatch::Part part, std::string_view field,
                                const std::string& word) {
    return refusal_of<heatmatch::InvalidInput>([&] {
        heatmatch::set_field(heatmatch::part_kind(part).fields, heatmatch::part_record(part), field,
                             word, heatmatch::part_title(part));
    });
}

/// Whether a message has a piece in it; prints the message if not.
inline bool holds(const std::string& message, const std::string& piece) {
    const bool found = message.find(piece) != std::string::npos;
    if (!found) MESSAGE("message: ", message);
    return found;
}

inline bool holds(const char* message, const std::string& piece) {
    return holds(std::string(message), piece);
}

inline bool holds(const heatmatch::Sentence& message, const std::string& piece) {
    return holds(message.text(), piece);
}
