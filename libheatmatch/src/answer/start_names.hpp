#pragma once

#include "answer/start_draft.hpp"

#include <string>
#include <vector>

#include "heatmatch/base/suggestion.hpp"

/// Names of parts in answers.
namespace heatmatch {

/// The words of an answer that may name a part.
[[nodiscard]] std::vector<std::string> naming_words(const PlainAnswer& answer);
[[nodiscard]] std::string in_lower_case(std::string text);
/// Whether a text contains every word, a final s aside.
[[nodiscard]] bool has_all(const std::string& text, const std::vector<std::string>& words);
/// The first few of them.
[[nodiscard]] Sentences listed_names(const std::vector<std::string>& ids);
[[nodiscard]] std::string joined_words(const std::vector<std::string>& words);
/// Pieces at the start of an answer; one where none are stated.
[[nodiscard]] AnsweredNumber pieces_of_answer(const PlainAnswer& answer, const Field& field);

/// That no part of that kind has such a name, with those that are near.
template <class Part>
Understanding no_such_part(const std::vector<Part>& parts, const Sentence& kind,
                           const std::string& words) {
    std::vector<KnownName> known;
    known.reserve(parts.size());
    for (const Part& part : parts) known.push_back({.name = part.id, .label = part.label});
    const Sentence remedy = suggestion(words, known);
    return refused(start_sentences::say<"start.no_part">(
        with<"kind">(kind), with<"text">(words),
        with<"suggestion">(remedy.empty()
                               ? Sentence{}
                               : start_sentences::say<"start.suggested">(with<"remedy">(remedy)))));
}

}  // namespace heatmatch
