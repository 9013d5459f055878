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
/// The first six of them, with their labels where there are any.
[[nodiscard]] Sentences listed_names(const std::vector<std::string>& ids,
                                     const std::vector<std::string>& labels = {});
/// The groups of one answer: `3 x 250 W and 2 x 180 W` are two.
[[nodiscard]] std::vector<std::string> groups_in(std::string_view text);
/// Reads each group of an answer; refused with the first that is.
[[nodiscard]] Understanding answer_in_groups(StartDraft& draft, const PlainAnswer& answer,
                                             Understanding (*read)(StartDraft&,
                                                                   const PlainAnswer&));
/// That those words of an answer were not understood.
[[nodiscard]] Sentence leftover(const PlainAnswer& answer, const std::string& words);
[[nodiscard]] std::string joined_words(const std::vector<std::string>& words);
/// Pieces at the start of an answer; one where none are stated.
[[nodiscard]] AnsweredNumber pieces_of_answer(const PlainAnswer& answer, const Field& field);

/// That no part of that kind has such a name, with those that are near.
template <class Part>
Understanding no_such_part(const std::vector<Part>& parts, const Sentence& kind,
                           const std::string& words) {
    std::vector<KnownName> known;
    std::vector<std::string_view> ids;
    for (const Part& part : parts) {
        known.push_back({.name = part.id, .label = part.label});
        ids.push_back(part.id);
    }
    auto near = near_names(words, ids);
    if (near.empty()) near = akin_names(words, known);
    const Sentences names = listed_names({near.begin(), near.end()});
    return refused(start_sentences::say<"start.no_part">(
        with<"kind">(kind), with<"text">(words),
        with<"suggestion">(names.empty()
                               ? Sentence{}
                               : start_sentences::say<"start.suggested">(with<"names">(names)))));
}

}  // namespace heatmatch
