#pragma once

#include <array>

#include "heatmatch/base/sentence.hpp"

/// Rankings, verdicts and margins.
namespace heatmatch::answer_sentences {

inline constexpr auto ranking_lines = std::to_array<Template>({
    {"ranking.legend_power",
     "mean: watts into the elements averaged over the conditions; band: tolerance and age;"},
    {"ranking.legend_season",
     "kWh: heat into the elements a day, mean over the season; band: tolerance, age and, where the "
     "weather tells, cloud within its step;"},
    {"ranking.legend_share", "max%: share of what the panels could give;"},
    {"ranking.legend_sheath",
     "sheath: its temperature in {degrees} after three bright days, judged at the fill's worst, "
     "beside its limit; {load}: of heated length in bright cold; ?: not known, and head with it;"},
    {"ranking.legend_all",
     "head: smallest headroom of the limits whose passing is a danger ({unused} unused, {at_limit} "
     "at the limit); buy: price of elements and wire that are not owned, each at the middle of low "
     "and high; devices and wire that is named are not counted. {hookup}: two in series, one "
     "string of them. Order: heat in steps of {step} %, then fewest margins not assessed, then "
     "most headroom, then price."},
    {"ranking.pairing", "{count} pairing"},
    {"ranking.pairings", "{count} pairings"},
    {"ranking.rejected_none", "{pairings} evaluated, none rejected."},
    {"ranking.rejected", "{pairings} evaluated, {total} rejected: {reasons}."},
    {"ranking.reason", "{margin} {count}"},
    {"ranking.nothing_asked", "No pairing was asked for: top is {top}."},
    {"ranking.nothing_without_danger", "No pairing is without danger."},
    {"ranking.nothing_affordable", "No pairing is within the budget with its price known."},
    {"ranking.nothing_left",
     "No pairing is left: each has a danger, is beyond the budget, or has no known price."},
    {"ranking.nothing_to_rank", "Nothing is left to rank."},
    {"ranking.best_title", "the best of the ranking"},
    {"ranking.rejected_title", "{nothing_left} The best of the rejected"},
    {"ranking.shown_title", "{nothing_left} Shown are the best of the rejected. {reasons}"},
    {"ranking.front_title", "What trades for what: no other beats these in everything"},
    {"ranking.some_of", "{shown} of {all}"},
    {"ranking.front_letters",
     "What trades for what ({shown} that no other beats in everything; by letters, for they are no "
     "numbers of --rank):"},
    {"ranking.strongest_rejected", "The strongest rejected one: {circuit} ({heat}): {why}"},

    {"verdict.power", "About {mean} averaged over the conditions."},
    {"verdict.season",
     "About {mean} of heat on an average day of the season, like a heater of {mean_power} left "
     "on{darkest}. Over the season that is {share} % of what the panels could give."},
    {"verdict.darkest", "; {least} a day in {month}, the darkest month, like {least_power}"},
    {"verdict.lived_week",
     "The first week of {month}, the darkest month, lived through; its sun is not the month's "
     "mean:"},
    {"verdict.no_space",
     "No space is described with its covers and volume: what it does for one is not told."},
    {"verdict.space",
     "The space loses {loss} when it is {warmer} warmer than outside; {when} this lifts it by "
     "{lift}."},
    {"verdict.while_it_gives", "while it gives that"},
    {"verdict.over_the_season", "in the mean over the season"},
    {"verdict.danger", "DANGER: {margins}. Do not build it so. {counts}"},
    {"verdict.decides",
     "{said} State {field} of {part}: as long as nobody does, it may be a danger."},
    {"verdict.nearest",
     "Of the limits whose passing is a danger the nearest is {margin} of {subject}{numbers} "
     "(headroom {headroom})."},
    {"verdict.its_limit", ": {value}, its limit is {limit}"},
    {"verdict.heat_unknown", "How hot the sheath gets is not known: that limit may be nearer."},

    {"margins.title", "margins, the most severe first"},
    {"margins.plain_title", "margins"},
    {"margins.line", "{severity}: {margins}, {subject}: {says}"},
    {"margins.others", "no finding: {count} other checks; that promises nothing"},
    {"margins.missing", "To be found out: {fields}."},
    {"margins.reason", "{subject}: {says}"},
});

}  // namespace heatmatch::answer_sentences
