#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// The sentences of this room, listed in answer/sentence_tables.cpp.
namespace heatmatch::heat_sentences {

// A number in a remedy has the unit of its field where none is shown.
inline constexpr auto table = std::to_array<Template>({
    {"heat.moist_ground",
     "medium \"{medium}\": {field} = {given} is that of moist ground, which building tables list "
     "under \"sand and gravel\". Dry sand conducts {low} to {high}, and the sheath gets far hotter "
     "than computed here. If the bed is damp, put the value into {moist}."},
    {"heat.water_boils",
     "The water boils. It needs a vent or a relief valve, make-up water, and an overtemperature "
     "limit that opens before boiling. An element above the water line burns out within a minute."},
    {"heat.fill_dries",
     "The moist fill dries around the element, which exceeds {boiling}. From then on "
     "it is as hot as in a dry fill. Compute that too, and vent the steam."},

    {"heat.legs_overlap", "legs {apart} apart overlap: each is {thick} thick"},
    {"heat.legs_too_long",
     "heated legs of {length} fit neither the height of {height} nor the width of {width}"},
    {"heat.legs_do_not_fit",
     "{count} legs of {length}, {across} by {deep} across, do not fit a store {inside} and "
     "{height} high"},
    {"heat.round_inside", "{width} wide"},
    {"heat.box_inside", "{width} by {depth} wide"},
    {"heat.too_many_legs",
     "{bundles} times {row} heated legs are more than the {most} that can be laid out"},

    {"heat.as_dry", "as dry"},
    {"heat.as_store_needs", "as the store needs"},
    {"heat.tail_end", "{wall} and {pin} diameters, magnesia of {magnesia}"},
    {"heat.surface", "{area} of {transfer}"},
    {"heat.unknown_alloy", "unknown: {low} to {high} at {temperature}"},
    {"heat.tolerance", "{plus}/-{minus}"},
    {"heat.insulation_wall", "{wall} of insulation, from memory"},
    {"heat.cavity_fill", "{thick} of {conductivity}"},
    {"heat.hot_side", "no convection, no radiation: hot side"},
    {"heat.low_dry_sand", "low end of dry sand"},
    {"heat.less_current", "that of free air at current/{share}"},
    {"heat.estimate", "estimate"},
    {"heat.film_to_water", "{low} to {high}, {least} to {most} over boiling"},

    {"heat.dry_sand_has", "dry sand has {low} to {high}"},
    {"heat.plastics_have", "plastics have {low} to {high}"},
    {"heat.steel_has", "stainless steel has about {typical}"},
    {"heat.tubes_have", "tubular elements have {low} to {high}"},
    {"heat.polished", "{polished} is polished, {sooty} sooty"},
    {"heat.box_has", "a closed box has about {typical}"},
    {"heat.emissivities", "bright metal has {bright}, paint {paint}"},
    {"heat.losses", "bare metal has {low} to {high}, an insulation jacket {lagged} to {worst}"},
    {"heat.rod_has", "an {diameter} rod has about {heat} J/mK"},
    {"heat.full_sun_has", "full sun has {sun}"},
    {"heat.still_air_has", "still air has {wind}"},
    {"heat.mesh_serves", "{across} by {high} suit most beds"},
    {"heat.step_serves", "{step} s suit most beds"},
    {"heat.grains_touch", "{nothing} where the grains touch the sheath"},
    {"heat.none_is", "give {nothing} for none"},
    {"heat.itself", "{one} gives the closed form itself"},
    {"heat.day_has", "a day has at most {hours}; more days are counted by `days`"},

    {"heat.give_celsius", "give it in degrees Celsius"},
    {"heat.state_celsius", "state it in degrees Celsius"},
    {"heat.give_air", "give the air around the store in °C"},
    {"heat.give_sheath_limit", "give the limit of the sheath in °C"},
    {"heat.state_conductor_limit", "state the limit of the conductor in °C"},
    {"heat.state_amperes", "state it in amperes, whatever its direction"},
    {"heat.state_largest_current", "state the largest current of this element"},
    {"heat.sound_terminal", "a sound terminal has a resistance of milliohms"},
    {"heat.in_metres", "lengths are in meters"},
    {"heat.in_its_unit", "give it in the unit its name says"},
    {"heat.six_sides", "add up the six sides"},
    {"heat.leave_out", "omit it"},

    {"heat.measure", "measure it"},
    {"heat.measure_element", "measure the element"},
    {"heat.measure_leg", "measure the heated part of a leg"},
    {"heat.measure_vessel", "measure the inside of the vessel"},
    {"heat.measure_vessel_metres", "measure the inside of the vessel in meters"},
    {"heat.of_sheath_or_pipe", "that of the sheath, or of a pipe over it"},
    {"heat.half_diameter", "half the diameter of the sheath"},
    {"heat.metres_from_store_axis", "meters from the axis of the store"},
    {"heat.metres_from_axis", "meters from the axis"},
    {"heat.metres_above_floor", "meters above the floor"},
    {"heat.metres_from_leg_axis", "meters from the axis of the hottest leg"},
    {"heat.metres_from_leg", "meters from the nearest leg"},

    {"heat.lay_out_legs", "lay them out with leg_layout()"},
    {"heat.make_shell", "make it with store_shell()"},
    {"heat.make_fill", "make the fill with bed_fill()"},
    {"heat.liquid_mixes", "a liquid mixes by convection: use sheath_temperature()"},
    {"heat.larger_vessel", "choose a larger vessel, another spacing, or more legs"},
    {"heat.how_many", "state how many of them heat the store"},
    {"heat.how_long", "state how long it is charged"},
    {"heat.how_long_it_lasts", "give how long it lasts"},
    {"heat.hours_ahead", "state how many hours to look ahead"},
    {"heat.one_day", "at least one day charges it"},
    {"heat.power_of_legs", "give the power of all legs together"},
    {"heat.power_of_bank", "give the power of the whole bank"},
    {"heat.what_legs_take", "give the power into the legs"},

    {"heat.what_conducts", "state what conducts"},
    {"heat.outer_end", "only an outer end may be infinite"},
    {"heat.metal_and_section", "state metal and cross-section"},
    {"heat.endless", "an infinite segment without heat loss has no steady state"},
    {"heat.what_is_around", "state what is around it"},
    {"heat.heat_in_metre", "state the heat per meter"},
    {"heat.hold_an_end", "fix the temperature of an end, or give a segment a heat loss"},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id>(std::move(given)...);
}

}  // namespace heatmatch::heat_sentences
