#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// What this room says; the answer lists it.
namespace heatmatch::rank_sentences {

inline constexpr auto table = std::to_array<Template>({
    {"rank.by_heat", "Ordered by heat over {days} days of the season, typical weather."},
    {"rank.by_heat_of_hours",
     "Ordered by heat over {days} days of the season, typical weather, each hour at its mean: that "
     "favours many ohms a little, the bands hold cloud within the hour."},
    {"rank.by_power",
     "Ordered by power averaged over {conditions}: no weather was given, so the season is not "
     "counted."},
    {"rank.condition", "{sun} at {cells} cells"},
    {"rank.no_store",
     "No store is described: how hot elements get is not assessed. In dry sand the sheath, not the "
     "rated watts, limits an element."},
    {"rank.of_panel", "panel \"{panel}\": {warning}"},
    {"rank.first_groups",
     "Remarks on panels are listed for the first {listed} of {groups} groups; each candidate tells "
     "its own."},
    {"rank.front_cut",
     "Of the {all} pairings that no other beats in everything, the {kept} of most heat are kept."},
    {"rank.no_element",
     "No element of the catalog passes the filters of the installation: widen \"any\", or name an "
     "element you own."},
    {"rank.left_out", "{pairings} pairings left out: resistance not fixed"},

    {"rank.list_panels", "list what you own: {example}"},
    {"rank.list_elements", "list what you own or may buy: {example} allows all"},
    {"rank.one_of", "one of {families}"},
    {"rank.name_family", "name one of them, or leave family out for all"},
    {"rank.allow_element", "add it to them, as owned or by its family"},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id>(std::move(given)...);
}

}  // namespace heatmatch::rank_sentences
