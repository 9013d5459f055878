#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// The sentences of this room, listed in answer/sentence_tables.cpp.
namespace heatmatch::text_sentences {

inline constexpr auto table = std::to_array<Template>({
    {"text.write_quote_twice", "write a quote inside a cell twice"},
    {"text.rename_or_remove", "rename or remove one of the two"},
    {"text.remove_one", "remove one of the two"},
    {"text.take_out", "remove it from one of the two"},
    {"text.begins_with",
     "an installation begins with {beginning}; a newer heatmatch may have written this one"},
    {"text.at_least", "at least {example}"},
    {"text.is_it_catalog", "is this a catalog file of heatmatch?"},
    {"text.newer", "a newer heatmatch may have written it"},
    {"text.its_version", "read it with the version that wrote it"},

    {"text.levels", "a part or an installation needs five levels at most"},
    {"text.too_many_keys",
     "no part or installation has so many keys; remove those that do not belong"},
    {"text.correct_json", "correct the JSON"},
    {"text.correct_slip", "correct the JSON: {slip}"},
    {"text.ends_early", "the text ends before its last brace is closed"},
    {"text.close_text", "close the text with a straight quote (\")"},
    {"text.bare_word", "put names and texts between straight quotes (\"); no comments"},
    {"text.in_braces", "a comma is missing before it, or a brace is not closed"},
    {"text.in_brackets", "a comma is missing before it, or a bracket is not closed"},
    {"text.no_value", "remove the comma before it, or give the missing value"},

    {"text.write_number", "write it as in {number} or \"{with_unit}\""},
    {"text.glossary", "see the field glossary"},
    {"text.readme", "see the example in the README"},

    {"text.correct_cell", "correct the cell"},
    {"text.is_it_module_list",
     "is this the public module-rating list, with its three header lines?"},
    {"text.begin_with", "begin with {fields}"},
    {"text.quote_cells", "quote cells that hold a comma"},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id>(std::move(given)...);
}

}  // namespace heatmatch::text_sentences
