#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// The sentences of this room, listed in answer/sentence_tables.cpp.
namespace heatmatch::parts_sentences {

inline constexpr auto table = std::to_array<Template>({
    {"parts.assumption", "{part}: {field} = {value} ({source})"},
    {"parts.class_default", "class default"},
    {"parts.class_default_of", "class default, {source}"},
    {"parts.silicon", "silicon"},
    {"parts.amperes_behind", "the label's short-circuit current with rear irradiance"},
    {"parts.opaque_back", "opaque back, typical of this kind or age; from memory"},
    {"parts.front_only", "not stated: rear irradiance counts in the careful case only"},

    {"parts.say_where_from", "give the source of the numbers"},
    {"parts.correct_three", "exchange or correct the three"},
    {"parts.read_from_label", "read {quantity} from the label"},
    {"parts.coefficients",
     "labels give the coefficients as %/K: alpha of i_sc (small, positive), beta of "
     "v_oc (negative), gamma of power (negative). One in V/K or A/K is written as "
     "\"{volts}\" or \"{amperes}\""},
    {"parts.no_such_diode", "no diode behaves this way; read {what} again"},
    {"parts.label", "the label"},
    {"parts.v_mp_and_i_mp", "v_mp and i_mp"},
    {"parts.give_ohms", "give measured resistance, printed resistance, or rated_v and rated_w"},
    {"parts.measure_ohms",
     "measure again with the leads subtracted, or name an alloy whose resistance "
     "changes"},
    {"parts.keep_printed", "keep whichever the label prints"},
    {"parts.count_poles", "count the poles, or read the pair again"},
    {"parts.own_surface",
     "state plating for copper strands only; clad or solid metal is not plated"},
    {"parts.name_temperatures", "name the air and conductor temperature of the table"},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id>(std::move(given)...);
}

}  // namespace heatmatch::parts_sentences
