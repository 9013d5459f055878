#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// The questions of a new installation, and what is said about their answers.
namespace heatmatch::start_sentences {

inline constexpr auto table = std::to_array<Template>({
    {"start.name", "What do you call this place?"},
    {"start.name.open", "It is called \"{name}\"."},
    {"start.latitude", "At which latitude is it? South is negative, or add S."},
    {"start.latitude.open",
     "Latitude is not known: sun and season are not computed, and circuits are ranked by power."},
    {"start.record_low", "What is the lowest air temperature on record there?"},
    {"start.record_low.open",
     "The record low is not known: {low} is assumed, which makes the voltages high."},
    {"start.mounting", "How are the panels tilted, and which way do they face?"},
    {"start.mounting.open",
     "Tilt or direction is not known: {tilt} from flat, facing {azimuth}, is assumed."},
    {"start.sun",
     "Do you have a table of the sun on the panels, twelve means in {unit} a day, January first?"},
    {"start.sun.open",
     "No table of sun: a typical sky of the latitude is used; {band} more or less is common."},
    {"start.air",
     "Air temperatures are typical of latitude and record low; {band} more or less is common."},
    {"start.hottest",
     "The days of the warmest month are assumed hot, {air}, so that stagnation is not "
     "understated."},
    {"start.code", "Which wiring code applies there: nec (North America) or iec (elsewhere)?"},
    {"start.code.open",
     "The wiring code is not known: wire is held to both, so fewer circuits can be recommended. "
     "State site.code."},
    {"start.is_code", "Wire is held to the {code}. Local codes and licensed practice decide."},
    {"start.metal", "Is any of the wire in metal conduit or another metal raceway?"},
    {"start.metal.open",
     "It is not known if wire lies in metal raceway, so its bonding is not assessed. State "
     "runs[].surroundings.metal_raceway."},
    {"start.is_metal", "All wire counts as in metal raceway: less current, and it must be bonded."},
    {"start.is_no_metal", "No wire is in metal raceway."},
    {"start.system.open",
     "Maximum system voltage of \"{panel}\" is not known: no circuit can be recommended until "
     "parts.panels[].max_system_voltage_v is stated."},
    {"start.panels",
     "Which panels do you have? Their number, then Voc, Isc and maximum system voltage from the "
     "label, or a catalog name."},
    {"start.panels.open",
     "Your panels are not known: {count} of \"{panel}\" are assumed. Read the labels first."},
    {"start.elements", "Which heating elements do you own? Their number, then watts and volts."},
    {"start.elements.open", "You own no heating element: those of the catalog may be bought."},
    {"start.spend", "How much may be spent in all?"},
    {"start.spend.open", "No budget is stated: the bill is not limited."},
    {"start.store", "What holds the heat, in what vessel, and how large is it?"},
    {"start.store.open",
     "No store is described: temperatures of elements are not assessed, and nothing is "
     "recommended."},
    {"start.place",
     "Where is the store, inside the heated space or outside, and what is under it?"},
    {"start.place.open", "The place of the store is not known."},
    {"start.wire", "How long is the wire from the panels to the store, one way?"},
    {"start.wire.open", "No wire is described: none is assessed or put on the bill."},
    {"start.space", "What is to be kept warm: area and kind of its cover, and volume?"},
    {"start.space.open", "No space is described: what the heat does for it is not computed."},
    {"start.warmth", "How warm is it to be, and in which months?"},
    {"start.warmth.open", "Months are not known: {months} is assumed."},
    {"start.damp", "Is it damp there, as in a greenhouse, barn or cellar?"},
    {"start.damp.open", "Damp is not known: it counts as damp, which lowers the touch voltage."},

    {"start.polar",
     "Beyond latitude {latitude} no typical sky is known: state twelve months in the file."},

    {"start.how",
     "Press Enter where you do not know. What is behind # is kept as a note; {back} returns to the "
     "question before. Numbers may have any unit."},
    {"start.like", "for example: {example}"},
    {"start.more", "Another one? Enter: no more."},

    {"start.is_name", "The place is \"{name}\"."},
    {"start.is_north", "Latitude {latitude} north."},
    {"start.is_south", "Latitude {latitude} south."},
    {"start.is_low", "Record low {low} ({other})."},
    {"start.is_mounted",
     "Tilted {tilt} from flat, facing {azimuth} (north {north}, south {south})."},
    {"start.is_sun", "Sun on the panels: {least} to {most} a day."},
    {"start.is_panels", "{count} × {label}: Voc {volts}, Isc {amperes} each{mpp}{system}{age}."},
    {"start.aged", ", {age} old"},
    {"start.is_elements", "{count} × {label}."},
    {"start.is_own_element",
     "{count} × an element of {watts} at {volts}. Its sheath is not known, so its temperature is "
     "not assessed."},
    {"start.is_budget", "At most {amount} {currency} for the whole bill."},
    {"start.is_no_budget", "Nothing is to be bought."},
    {"start.is_cylinder", "{medium}, {diameter} across and {height} high{vessel}."},
    {"start.is_box", "{medium}, {width} by {depth} and {height} high{vessel}."},
    {"start.in_vessel", ", vessel of {material}"},
    {"start.is_place", "Store {where}{on}."},
    {"start.is_inside", "in the heated space"},
    {"start.is_outside", "outside"},
    {"start.on", ", on {what}"},
    {"start.is_wire", "{length} of wire one way; the wire is chosen, and so is the element lead."},
    {"start.is_space", "{area} of {cover}, {volume} of air."},
    {"start.is_space_open", "{area} of {cover}; its volume is not known."},
    {"start.is_warm", "At least {target}, {months}."},
    {"start.is_months", "Heat is needed {months}."},
    {"start.months", "{from} to {to}"},
    {"start.is_damp", "Damp: touch duties begin at {volts}."},
    {"start.is_dry", "Dry: touch duties begin at {volts}."},

    {"start.no_number", "\"{text}\" holds no {what}: write it like {example}."},
    {"start.many_numbers", "\"{text}\" holds more than one {what}: write one, like {example}."},
    {"start.two_ways", "\"{text}\" can be read in two ways: write a point for decimals."},
    {"start.out_of_range", "The {what} must be {low} to {high}, not {value}."},
    {"start.need_example", "\"{text}\" is not understood: write it like {example}."},
    {"start.write_unit", "{beyond} Write the unit, like {example}."},
    {"start.twelve", "There must be twelve numbers, not {count}: January to December."},
    {"start.which",
     "\"{text}\" fits {count} parts of the catalog: write one of {names}, or a label's Voc and "
     "Isc."},
    {"start.which_element", "\"{text}\" fits {count} elements: write one of {names}."},
    {"start.which_cover", "\"{text}\" fits {count} kinds of cover: write one of {names}."},
    {"start.no_part",
     "The catalog has no {kind} \"{text}\"{suggestion}. `heatmatch catalog list {kind}` lists "
     "all."},
    {"start.suggested", "; near are {names}"},
    {"start.leftover",
     "\"{text}\" is not kept: {words} is not understood. Leave it out, or write it behind #."},
    {"start.other_currency",
     "The catalog's prices are in USD, so a budget in {currency} cannot be compared. Write it in "
     "USD, or state goals.per_usd in the file."},
    {"start.and_vmp", ", Vmp {volts}, Imp {amperes}"},
    {"start.and_system", ", maximum system voltage {volts}"},
    {"start.taken",
     "{count} × {label}, from the catalog as \"{id}\". If yours differs, write another catalog "
     "name."},
    {"start.swapped", "Voc {volts} must be above Vmp {lower}, and Isc {amperes} above Imp {less}."},
    {"start.nothing_left",
     "Without an element of your own something must be bought: name a sum, or an element before."},
    {"start.refused", "{why}"},
    {"start.note_of", "{question}: {note}"},
    {"start.assumed", "Assumed: {what}"},
    {"start.lead", "Air around the lead is assumed: {air}. Measure it."},
    {"start.what_latitude", "latitude"},
    {"start.what_temperature", "temperature"},
    {"start.what_tilt", "tilt"},
    {"start.what_sun", "daily sum"},
    {"start.what_count", "number of pieces"},
    {"start.what_volts", "voltage"},
    {"start.what_amperes", "current"},
    {"start.what_watts", "power"},
    {"start.what_age", "age"},
    {"start.what_amount", "sum of money"},
    {"start.what_length", "length"},
    {"start.what_area", "area"},
    {"start.what_volume", "volume"},
    {"start.panel_kind", "panel"},
    {"start.element_kind", "element"},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id>(std::move(given)...);
}

}  // namespace heatmatch::start_sentences
