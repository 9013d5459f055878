#pragma once

#include <array>
#include <string>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// Sentences of this room and common ones, listed in answer/sentence_tables.cpp.
namespace heatmatch::base_sentences {

inline constexpr auto table = std::to_array<Template>({
    {"base.verbatim", "{text}"},
    {"base.amount", "{amount}"},
    {"base.name", "{name}"},
    {"base.all", "{sentences: }"},

    {"base.from_memory", "from memory"},

    {"base.quoted", "\"{name}\""},
    {"base.did_you_mean", "did you mean {names: or }?"},
    {"base.choices", "choices: {names}"},
    {"base.families", "families: {names}"},
    {"base.choose_one", "write one of them"},
    {"base.exchange", "exchange the two"},
    {"base.exchanged", "check whether the two are exchanged"},
    {"base.rename_one", "rename one of the two"},
    {"base.correct", "correct the value"},
    {"base.correct_or_leave_out", "correct the value, or omit the field if it is unknown"},
    {"base.leave_out", "omit the field if it is unknown"},
    {"base.glossary", "see the field glossary: {meaning}"},
    {"base.write_as", "write it as in \"{example}\""},

    {"base.sort", "sort the table by {column}"},
    {"base.shorten", "shorten the text"},
    {"base.type_again", "type the text again"},
    {"base.as_well", "or give {fields} as well"},
    {"base.write", "write {text}"},
    {"base.write_smaller", "write a smaller one"},
    {"base.decimal_point", "use a point for decimals and no separator for thousands"},
    {"base.divided_by_zero", "do not divide by zero"},
    {"base.unknown_unit", "the unit {unit} is not known; write it as in {examples}"},
    {"base.other_dimension", "\"{unit}\" is {dimension}; {instead}"},
    {"base.bare_number", "write a bare number"},
    {"base.write_in", "write it in {unit}"},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id>(std::move(given)...);
}

/// Source of values without a document.
[[nodiscard]] inline Sentence from_memory() {
    return say<"base.from_memory">();
}

}  // namespace heatmatch::base_sentences
