#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// What this room says; the answer lists it.
namespace heatmatch::days_sentences {

inline constexpr auto table = std::to_array<Template>({
    // What days come to.
    {"days.no_space",
     "The store takes {heat} on the mean day; what it does for a space is not known here."},
    {"days.lift",
     "On the mean night the store lifts the space by {mean} ({dusk} at dusk, {dawn} at dawn)"},
    {"days.no_target", "{lift}; what is wanted is not told (space.target_c)."},
    {"days.hardly_below", "{lift}; the nights are hardly below the {wanted} wanted."},
    {"days.verdict", "{lift}, of the {short} that {wanted} wants in the mean: {verdict}"},
    {"days.keeps", "it keeps the space there."},
    {"days.carries_part", "it carries part of the heating, not all of it."},
    {"days.edge_off", "it takes the edge off; it does not heat the space."},
    {"days.heat",
     "In {days} days {in} of the {available} that the panels could give reach the elements, as "
     "much as a heater of {mean} left on; {out}, {rest}"},
    {"days.to_space", "{space} reach the space, {outside} are lost outside it"},
    {"days.leaves_store", "{outside} leave the store"},
    {"days.stays", "{stored} stay in it."},
    {"days.held_before", "{stored} came from what it held before."},
    {"days.noticed_until",
     "By the store alone the space is {noticed} warmer or more until about {until}."},
    {"days.never_noticed", "By the store alone the space is never {noticed} warmer in the dark."},
    {"days.lid_until", "Its lid is {warm} above the air around it or more until about {until}."},
    {"days.carry_over",
     "It gives at least half of the night's largest heat for {hours} after dusk."},
    {"days.peak", "{severity}: {margin}"},
    {"days.opened_once", "Thermostat or limit opened {times} time."},
    {"days.opened", "Thermostat or limit opened {times} times."},
    {"days.not_opened", "danger: \"{device}\" should have opened and could not."},
    {"days.sheath_reaches", "The sheath reaches {value}; {sheath} stands {limit} for years."},
    {"days.sheath_not_known", "The sheath reaches {value}; what it is made of is not known."},
    {"days.stagnation",
     "Fourteen cloudless days with the circuit welded shut and nobody taking the heat, the air "
     "around the store at {air}: in a fill that conducts as badly as it may the sheath reaches "
     "{sheath}, the bed {bed} in the mean, the wall {wall}, the lid {lid}; in one that conducts as "
     "well as it may {sheath_well}, {bed_well}, {wall_well} and {lid_well}."},

    {"days.stagnation_in_liquid",
     "Fourteen cloudless days with the circuit welded shut and nobody taking the heat, the air "
     "around the store at {air}: the sheath reaches {sheath}, the liquid {bed} in the mean, the "
     "wall {wall}, the lid {lid}."},

    // What to know first.
    {"days.space_alone",
     "The space warms by the store alone: sun through its covers, the ground and other heat are "
     "not counted."},
    {"days.space_not_known",
     "What the space loses is not known (give its covers with their areas): the air around the "
     "store counts as the outside air."},
    {"days.counts_as_dry",
     "The fill counts as dry: while it is damp it conducts better and takes heat to dry."},
    {"days.ice",
     "The water falls below {freezing}: ice, the heat in it and what it bursts are not counted."},
    {"days.acted_before", "\"{device}\" {what} in the days before the first day already."},
    {"days.opens", "opens"},
    {"days.closes", "closes"},
    {"days.cannot_open", "cannot open"},
    {"days.wire_air",
     "The wire at the element stands in the air that its run states, {air}, day and night."},
    {"days.air_colder", "The air is {shift} colder than the weather's."},
    {"days.air_warmer", "The air is {shift} warmer than the weather's."},
    {"days.not_set",
     "What \"{control}\" is set to is not told (set_c): it counts as never opening."},
    {"days.never_opens", "\"{control}\" counts as never opening: {why}"},
    {"days.commands_nothing",
     "\"{control}\" senses, but nothing that it could command opens the circuit: {why}"},
    {"days.welded", "\"{breaker}\" counts as welded shut: {why}"},

    // Remedies.
    {"days.fine_step", "{seconds} s is fine enough"},
    {"days.warm_up", "three days fill most stores"},
    {"days.start_at_mean", "give the store's mean"},
    {"days.in_celsius", "give it in °C"},
    {"days.fan_takes", "a small fan through a pipe takes {low} to {high}"},
    {"days.midnight", "{hour} is midnight"},
    {"days.describe_store", "describe the store of the installation"},
    {"days.measure_store", "measure vessel and element"},
    {"days.fit_legs", "choose a larger vessel or shorter legs"},
    {"days.give_weather", "give sun and air of a day or more"},
    {"days.january", "{month} is January"},
    {"days.how_many", "say how many days to live through"},
    {"days.cold_week", "a cold week is some {below} below its month"},
    {"days.weather_in_order", "take monthly means, clear days, or a part of the data without gaps"},
    {"days.other_month", "choose another, or weather of that month"},
    {"days.fewer", "choose fewer days, or an earlier month"},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id>(std::move(given)...);
}

}  // namespace heatmatch::days_sentences
