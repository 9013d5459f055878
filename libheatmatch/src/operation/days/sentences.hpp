#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// The sentences of this room, listed in answer/sentence_tables.cpp.
namespace heatmatch::days_sentences {

inline constexpr auto table = std::to_array<Template>({
    // Results of days.
    {"days.shared",
     "{count} circuits heat this store together; heat in the store and to the space is that of "
     "all."},
    {"days.all_circuits", "simulate all circuits of the store together"},
    {"days.no_space",
     "The store absorbs {heat} on an average day; its effect on a space is not known "
     "here."},
    {"days.warmer_until",
     "On an average night the store keeps the space {noticed} or more warmer until about {until}."},
    {"days.warmer_from",
     "On an average night the store keeps the space {noticed} or more warmer from about {from} "
     "until about {until}."},
    {"days.never_noticed",
     "On an average night the store warms the space by less than {noticed} at any time."},
    {"days.lift", "{lasts} Mean {mean}: {dusk} at dusk, at most {most} at {at}, {dawn} at dawn"},
    {"days.no_target", "{lift}; the target temperature is not stated (space.target_c)."},
    {"days.hardly_below", "{lift}; the nights are hardly below the target of {wanted}."},
    {"days.verdict", "{lift}. The target of {wanted} needs {short}: {verdict}"},
    {"days.keeps", "in this simulation the store alone keeps the space at the target."},
    {"days.carries_part", "the store alone supplies part of the heating, not all of it."},
    {"days.edge_off", "this is only a small part of the heating."},
    {"days.heat",
     "Over {days} days, {in} of the {available} available from the panels reaches the "
     "elements. That equals a heater of {mean} left on. {balance}: {out}, {rest}"},
    {"days.darker",
     "These {days} days are darker than the mean of their month: {sun} a day on the panels, not "
     "{month}."},
    {"days.brighter",
     "These {days} days are brighter than the mean of their month: {sun} a day on the panels, not "
     "{month}."},
    {"days.balance", "Balance"},
    {"days.balance_of_all", "Balance of all {count} circuits"},
    {"days.to_space", "{space} reaches the space, {outside} is lost outside it"},
    {"days.leaves_store", "{outside} leaves the store"},
    {"days.stays", "{stored} stays in the store."},
    {"days.held_before", "{stored} came from heat stored before."},
    {"days.lid_until", "The lid is {warm} or more above the surrounding air until about {until}."},
    {"days.peak", "{severity}: {margin}"},
    {"days.opened_once", "A thermostat or overtemperature limit opened {times} time."},
    {"days.opened", "Thermostat or overtemperature limit opened {times} times."},
    {"days.not_opened", "danger: \"{device}\" should have opened and could not."},
    {"days.sheath_reaches", "The sheath reaches {value}; {sheath} withstands {limit} for years."},
    {"days.sheath_not_known", "The sheath reaches {value}; its material is not known."},
    {"days.stagnation",
     "In stagnation the sheath reaches {sheath}, the bed mean {bed}, the wall {wall}, "
     "the lid {lid}. That is fourteen cloudless days, the circuit welded closed, no "
     "heat drawn, and air at {air} around the store. It is for the lowest conductivity"
     " of the fill; at the highest they reach {sheath_well}, {bed_well}, {wall_well} "
     "and {lid_well}."},

    {"days.stagnation_in_liquid",
     "In stagnation the sheath reaches {sheath}, the liquid mean {bed}, the wall "
     "{wall}, the lid {lid}. That is fourteen cloudless days, the circuit welded "
     "closed, no heat drawn, and air at {air} around the store."},

    // Remarks at the start.
    {"days.space_alone",
     "The space is warmed by the store alone: sun through its covers, the ground and "
     "other heat are not counted."},
    {"days.space_not_known",
     "The heat loss of the space is not known: give its covers with their areas. The "
     "air around the store is assumed equal to the outside air."},
    {"days.counts_as_dry",
     "The fill is assumed dry. While damp it conducts better, and drying it uses heat."},
    {"days.ice",
     "The water temperature falls below {freezing}. Ice, its heat and damage from freezing are not "
     "modeled."},
    {"days.acted_before", "\"{device}\" {what} already during the warm-up days."},
    {"days.opens", "opens"},
    {"days.closes", "closes"},
    {"days.cannot_open", "cannot open"},
    {"days.wire_air", "The air around the element lead is {air} day and night, as its run states."},
    {"days.air_colder", "The air is {shift} colder than in the weather data."},
    {"days.air_warmer", "The air is {shift} warmer than in the weather data."},
    {"days.not_set",
     "The set point of \"{control}\" is not stated (set_c): it is assumed never to "
     "open."},
    {"days.never_opens", "\"{control}\" is assumed never to open: {why}"},
    {"days.commands_nothing",
     "\"{control}\" senses temperature, but no device that it commands opens the "
     "circuit: {why}"},
    {"days.welded", "\"{breaker}\" is assumed welded closed: {why}"},

    // Remedies.
    {"days.fine_step", "{seconds} s is fine enough"},
    {"days.warm_up", "three days warm up most stores"},
    {"days.start_at_mean", "give the mean temperature of the store"},
    {"days.in_celsius", "give it in °C"},
    {"days.fan_takes", "a small fan through a pipe extracts {low} to {high}"},
    {"days.midnight", "{hour} is midnight"},
    {"days.describe_store", "describe the store of the installation"},
    {"days.measure_store", "measure vessel and element"},
    {"days.fit_legs", "choose a larger vessel or shorter legs"},
    {"days.give_weather", "give irradiance and air temperature for at least a day"},
    {"days.january", "{month} is January"},
    {"days.how_many", "give the number of days to simulate"},
    {"days.cold_week", "a cold week is about {below} below its month"},
    {"days.weather_in_order", "use monthly means, clear days, or a part of the data without gaps"},
    {"days.other_month", "choose another month, or weather data with that month"},
    {"days.fewer", "choose fewer days, or an earlier month"},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id>(std::move(given)...);
}

}  // namespace heatmatch::days_sentences
