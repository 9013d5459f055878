#pragma once

#include <array>

#include "heatmatch/base/sentence.hpp"

/// Rankings, verdicts and margins.
namespace heatmatch::answer_sentences {

inline constexpr auto ranking_lines = std::to_array<Template>({
    {"ranking.legend_power",
     "mean: watts into the elements averaged over the conditions. band: tolerance and "
     "age."},
    {"ranking.legend_season",
     "kWh/day: heat into the elements, mean over the season. band: tolerance, age "
     "and, where the weather data allow, cloud within the step."},
    {"ranking.legend_share", "max%: utilization, the share of what the panels could give."},
    {"ranking.legend_sheath",
     "sheath: temperature and limit in {degrees} after three bright days, for the worst fill. ?: "
     "not "
     "known; then head is not known either."},
    {"ranking.legend_load", "{load}: power per heated length in cold, bright weather."},
    {"ranking.legend_like", "+{one} after elements: more banks of the same load, none better."},
    {"ranking.legend_all",
     "head: smallest headroom to a limit that is dangerous to exceed ({unused} unused, {at_limit} "
     "at the limit). cold V: open-circuit voltage at the record low. {buy}: the "
     "whole "
     "bill of what is not owned, at the middle of the price range; "
     "{unknown}: not known. {hookup}: two in series, one string. "
     "Order: heat in steps of {step} %, then fewest margins not assessed, then most headroom, then "
     "price."},
    {"ranking.build_place", ">{place}"},
    {"ranking.open_place", "{place}?"},
    {"ranking.short_build", "{mark}: BUILD."},
    {"ranking.short_head", "head: headroom."},
    {"ranking.short_open", "{mark} after #: a deciding check is not assessed."},
    {"ranking.nearest_instead",
     "No circuit can be recommended. {lacking} The circuit shown is the nearest: {circuit}."},
    {"ranking.pairing", "{count} pairing"},
    {"ranking.pairings", "{count} pairings"},
    {"ranking.rejected_none", "{pairings} evaluated, none rejected."},
    {"ranking.rejected", "{pairings} evaluated, {total} rejected: {reasons}."},
    {"ranking.reason", "{margin} {count}"},
    {"ranking.short", "{pairings} evaluated, {total} rejected. Details: --full."},
    {"ranking.above_volts", "{said} {count} more left out: above {volts} at the record low."},
    {"ranking.nothing_below", "No array is at most {volts} at the record low."},
    {"ranking.nothing_asked", "No pairing was requested: top is {top}."},
    {"ranking.nothing_without_danger", "No pairing is without danger."},
    {"ranking.nothing_affordable", "No pairing is within the budget."},
    {"ranking.nothing_left",
     "No pairing fits: each has a danger or is over the budget. Relax panels, element or bank."},
    {"ranking.nothing_to_rank", "Nothing is left to rank."},
    {"ranking.best_title", "the best of the ranking"},
    {"ranking.rejected_title", "{nothing_left} The best of the rejected"},
    {"ranking.shown_title", "{nothing_left} Shown are the best of the rejected. {reasons}"},
    {"ranking.front_title", "Trade-offs: no other circuit beats these in heat, headroom and price"},
    {"ranking.some_of", "{shown} of {all}"},
    {"ranking.front_letters",
     "Trade-offs: {shown} circuits that no other beats in heat, headroom and price "
     "(lettered, not places for --rank):"},
    {"ranking.strongest_rejected", "The strongest rejected pairing: {circuit} ({heat}): {why}"},

    {"verdict.power", "About {mean} averaged over the conditions."},
    {"verdict.season",
     "About {mean} of heat on an average day of the season, equal to a heater of "
     "{mean_power} left on{darkest}. Utilization over the season is {share} %."},
    {"verdict.darkest", "; {least} a day in {month}, the darkest month, equal to {least_power}"},
    {"verdict.lived_week",
     "Simulation of the first week of {month}, the darkest month; its sun is not the month's "
     "mean:"},
    {"verdict.no_space",
     "No space is described with its covers and volume, so its temperature is not "
     "computed."},
    {"verdict.space",
     "The space loses {loss} when it is {warmer} warmer than outside; {when} this heat"
     " raises it by {lift}."},
    {"verdict.while_it_gives", "at that power"},
    {"verdict.over_the_season", "on average over the season"},
    {"verdict.danger", "DANGER: {margins}. Do not build it this way. {counts}"},
    {"verdict.decides",
     "{said} State {field} of {part}: until it is known, the circuit may have a danger."},
    {"verdict.may_be",
     "{said} At the worst end of what is not known, these may be a danger: {margins}."},
    {"verdict.nearest",
     "Nearest limit that is dangerous to exceed: {margin} of {subject}{numbers} (headroom "
     "{headroom})."},
    {"verdict.its_limit", ", {value} with a limit of {limit}"},
    {"verdict.heat_unknown", "The sheath temperature is not known: that limit may be nearer."},

    {"margins.title", "margins, the most severe first"},
    {"margins.plain_title", "margins"},
    {"margins.line", "{severity}: {margins}, {subject}: {says}"},
    {"margins.others", "{count} other checks: no finding, which promises nothing"},
    {"margins.missing", "Not known: {fields}."},
    {"margins.reason", "{subject}: {says}"},
});

}  // namespace heatmatch::answer_sentences
