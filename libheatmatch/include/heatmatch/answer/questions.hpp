#pragma once

#include <array>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "heatmatch/base/choice.hpp"
#include "heatmatch/base/sentence.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

/// The questions from which an installation is made, in their order.
enum class QuestionKind {
    name,
    latitude,
    record_low,
    mounting,
    sun,
    panels,
    elements,
    spend,
    store,
    place,
    wire,
    metal,
    space,
    warmth,
    damp,
    code
};
inline constexpr auto question_words = std::to_array<std::string_view>(
    {"name", "latitude", "record low", "mounting", "sun", "panels", "elements", "spend", "store",
     "place", "wire", "metal", "space", "warmth", "damp", "code"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(QuestionKind) {
    return question_words;
}

/// One question. Every one may stay open: `unknown` is what is assumed then.
struct Question {
    QuestionKind kind = QuestionKind::name;
    Sentence ask{};
    std::string example{};  //!< of an answer, in the unit set of the reader
    Sentence unknown{};
    bool repeats = false;  //!< asked again until the answer is empty
};
[[nodiscard]] std::vector<Question> questions(UnitSystem system = UnitSystem::si);

/// How to answer; `back` is the word that returns to the question before.
[[nodiscard]] Sentence how_to_answer(std::string_view back);
/// That an answer is like this example; that a question is asked once more.
[[nodiscard]] Sentence answer_like(std::string_view example);
[[nodiscard]] Sentence ask_for_more();

}  // namespace heatmatch
