#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// The sentences of this room, listed in answer/sentence_tables.cpp.
namespace heatmatch::setting_sentences {

inline constexpr auto table = std::to_array<Template>({
    {"setting.each_month", "give one for each month"},
    {"setting.ask_station",
     "look up the lowest temperature on record at the nearest weather station"},
    {"setting.rows_apart", "measure along the ground from one lower edge to the next"},
    {"setting.minus_sign",
     "check the minus sign: the record low is the lowest temperature ever, and "
     "determines the cold voltage"},
    {"setting.no_panels", "the installation lists no panels"},
    {"setting.shade_table",
     "give one number, one for each of {months} months, or {hours} hours for each month"},
    {"setting.light_lost", "state the share of light that they lose"},
    {"setting.omit_for_all", "omit it where the whole panel is shaded"},
    {"setting.always_shaded", "panels that are always in full shade deliver nothing"},
    {"setting.say_what_was_read", "state what the meter read, or omit measured"},
    {"setting.write_either", "write {one} or {other}"},
    {"setting.describe_circuit", "describe the circuit under \"circuit\" or \"circuits\""},
    {"setting.one_list", "list all circuits under \"circuits\" and remove \"circuit\""},
    {"setting.rename_circuit", "give each circuit a name of its own"},
    {"setting.describe_run", "describe the run under \"runs\""},
    {"setting.array_or_group", "state array, or group and panels"},
    {"layout.no_brackets", "join strings with |, and what is in series with +"},
    {"layout.at", "{what} (character {place})"},
    {"layout.join", "join names by + in series or | in parallel; quote a name with such signs"},
    {"layout.no_name", "a name is missing"},
    {"layout.bracket_open", "a bracket is not closed"},
    {"layout.quote_open", "a quotation mark is not closed"},
    {"layout.repetition", "after a name write x and a count up to {most}"},
    {"layout.too_many", "it has more than {most} parts"},
    {"layout.too_deep", "brackets are nested more than {most} deep"},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id>(std::move(given)...);
}

}  // namespace heatmatch::setting_sentences
