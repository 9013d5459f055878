#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// The sentences of this room, listed in answer/sentence_tables.cpp.
namespace heatmatch::rank_sentences {

inline constexpr auto table = std::to_array<Template>({
    {"rank.by_heat", "Ranked by heat over {days} days of the season in typical weather."},
    {"rank.by_heat_of_hours",
     "Ranked by heat over {days} days of the season in typical weather. Hourly means "
     "favor high resistance slightly; the bands include cloud within the hour."},
    {"rank.by_power", "Without weather data, ranked by power averaged over {conditions}."},
    {"rank.condition", "{sun} at {cells} cells"},
    {"rank.alone",
     "Each pairing is judged alone in the store, with the runs and devices of circuit \"{first}\"; "
     "an assessment judges your {count} circuits together."},
    {"rank.no_store",
     "No store is described, so element temperatures are not assessed. In dry sand the"
     " sheath, not the rated power, limits an element."},
    {"rank.of_panel", "panel \"{panel}\": {warning}"},
    {"rank.first_groups",
     "Remarks on panels are listed for the first {listed} of {groups} groups; each "
     "candidate lists its own."},
    {"rank.front_cut", "Of {all} Pareto-optimal pairings, the {kept} with the most heat are kept."},
    {"rank.no_element",
     "No element of the catalog matches the filters of the installation: widen "
     "\"any\", or name an element you own."},
    {"rank.bill_not_known",
     "The bill of {count} of the listed pairings is not known. They come last: they do not count "
     "as "
     "within the budget."},
    {"lacks.no_array", "No array is at most {volts} at the record low."},
    {"lacks.volts",
     "No array that could be recommended is at most {volts} at the record low. Without that "
     "requirement: {circuit}, {cold}."},
    {"lacks.money", "{amount} {currency}"},
    {"lacks.budget",
     "Nothing that could be recommended costs at most {budget}. The cheapest costs {bill}: "
     "{circuit}."},
    {"lacks.facts", "State {facts:; }{more}.{price}"},
    {"lacks.fact", "{fact} ({margins})"},
    {"lacks.more", "; and {count} more"},
    {"lacks.also", " {price}"},
    {"lacks.of_catalog", "{field} of {kind} \"{part}\" in the catalog"},
    {"lacks.of_inline", "parts.{kind}[{place}].{field}"},
    {"lacks.either", "{path} or {other}"},
    {"lacks.without_field", "{what} for {subject}"},
    {"lacks.part", "No part of the catalog meets a need: {why}"},
    {"lacks.price", "Give {part} a price in the catalog: the bill is not known without it."},
    {"lacks.currency", "Give {part} a price in the currency of the goals."},
    {"lacks.purchase", "Buy {part}. Without it {circuit} is a danger: {why}"},
    {"lacks.danger", "Every pairing has a danger. The one with the most heat is {circuit}: {why}"},
    {"rank.left_out", "{pairings} pairings left out: resistance not fixed"},

    {"rank.list_panels", "list what you own: {example}"},
    {"rank.list_elements", "list what you own or may buy: {example} allows all"},
    {"rank.one_of", "one of {families}"},
    {"rank.name_family", "name one of them, or omit family for all"},
    {"rank.allow_element", "add it to them, as owned or by its family"},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id>(std::move(given)...);
}

}  // namespace heatmatch::rank_sentences
