#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// The sentences on runs of wire and their hot tails, listed in answer/sentence_tables.cpp. A
/// margin fills {value} and {limit}.
namespace heatmatch::margins_sentences::of_runs {

inline constexpr auto table = std::to_array<Template>({
    {"run.voltage", "The {part} is exposed to {value} at the record low; it is rated {limit}."},
    {"run.voltage_alone",
     "The {part} is exposed to {value} at the record low; its rated voltage is not "
     "known."},
    {"run.wire", "wire"},
    {"run.joint", "joint"},
    {"run.table_current",
     "Required ampacity is {value} ({factor} times short-circuit current). The code's table gives "
     "{limit}{laid}."},
    {"run.table_current_unknown",
     "The code's ampacity for this wire, installed this way, is not known."},
    {"run.more_than_any",
     "Required ampacity is {value}; even in the coolest installation the code's table gives only "
     "{limit}."},
    {"run.no_table_in_bed", "No code lists an ampacity for wire in the bed of a store."},
    {"run.one_code_only",
     "One code's tables list no ampacity for it installed this way: state \"code\" of "
     "the site."},
    {"run.laid_free_air", ", alone in free air"},
    {"run.laid_bundle", ", touching other wires"},
    {"run.laid_raceway", ", in a raceway"},
    {"run.laid_insulation", ", in thermal insulation"},
    {"run.laid_earth", ", in the ground"},
    {"run.laid_terminals", ", at the temperature rating of its terminals"},
    {"run.correction_needs_air",
     "The correction for ambient temperature requires the temperature around it."},
    {"run.corrected_current",
     "Required ampacity is {value} ({factor} times short-circuit current). The code's table{laid}, "
     "corrected for ambient temperature{also}, gives {limit}."},
    {"run.also", " {also: }"},
    {"run.also_insulation", "and for the lower rating of its insulation"},
    {"run.also_together", "and for {count} conductors together"},
    {"run.also_roof", "and for {rise} more, close above a roof in the sun"},
    {"run.hotter_than_allowed",
     "The ambient temperature is above the temperature rating of the conductor. The code allows no "
     "current there; it must carry {value}."},
    {"run.heat", "In run \"{run}\" the conductor reaches {value}; {what}."},
    {"run.field_unknown", "{field} is not known"},
    {"run.judged_in_bed",
     "It lies in the bed at the element, so it is judged as the element lead."},
    {"run.state_air", "State the temperature around \"{run}\" to determine its wire temperature."},
    {"run.runs_away",
     "The wire of \"{run}\" reaches no steady temperature at this current: thermal "
     "runaway."},
    {"run.insulation",
     "{family} insulation is rated {limit}; above that it degrades, melts or chars"},
    {"run.insulation_wet",
     "{family} insulation is rated {limit} where wet. Above that it absorbs water and ages early; "
     "above {dry} it degrades, melts or chars"},
    {"run.insulation_wet_unknown",
     "the wet rating of {family} insulation is not known; {limit} is the dry rating"},
    {"run.insulation_dries",
     "Its wet rating is {wet}. The dry rating applies only because heat keeps it dry."},
    {"run.insulation_unknown", "The insulation is not known."},
    {"run.wet_limit_unknown", "The wet rating of its insulation is not known."},
    {"run.plating", "{metal} oxidizes above {limit} and ages early"},
    {"run.bare_metal", "bare {conductor}"},
    {"run.plated_metal", "{plating}-plated {conductor}"},
    {"run.joint_heat", "its joint ({joint}) is rated {limit}"},
    {"run.joint_unknown",
     "The joints at the ends of this run are not known; joints usually fail first."},
    {"run.joint_current",
     "Its joints must carry {value} ({factor} times short-circuit current); they are "
     "rated {limit}."},
    {"run.joint_current_alone", "Its joints must carry {value}; their rated current is not known."},
    {"run.sunlight", "The jacket is marked for sunlight."},
    {"run.no_sunlight", "The jacket is not marked for sunlight: it cracks within years."},
    {"run.sunlight_unknown",
     "Whether the jacket is rated for sunlight is not known: look for the print on it."},
    {"run.out_of_sun", "It lies out of the sun."},
    {"run.dry_place", "It lies in a dry place."},
    {"run.dry_in_bed", "It lies in the bed, where heat keeps it dry: no wet rating is required."},
    {"run.may_lie", "Wire of this kind ({kind}) is permitted {where}."},
    {"run.may_not_lie", "Wire of this kind ({kind}) is not permitted {where}."},
    {"run.may_lie_at_element",
     "Wire of this kind ({kind}) is permitted at the element, as part of the heater."},
    {"run.in_open", "fixed in the open, without a raceway"},
    {"run.outdoors", "outdoors"},
    {"run.in_raceway", "in a raceway"},
    {"run.in_cavity", "in a cavity of a building, without a raceway"},
    {"run.in_bed", "in the bed of a store"},
    {"run.kind_unknown",
     "Where this wire is permitted is not known: give the type letters on its jacket "
     "as its marking."},
    {"run.not_pv_wire",
     "The National Electrical Code permits PV wire there; this cable is marked by "
     "another standard only."},
    {"run.perhaps_not_pv_wire",
     "Only one code recognizes the standard marked on this cable: state \"code\" of "
     "the site."},
    {"run.may_be_buried", "It is marked for direct burial."},
    {"run.not_buried",
     "This {kind} is not marked for direct burial: it is not permitted in the ground."},
    {"run.burial_unknown",
     "Whether this {kind} is permitted in the ground is not known: look for the print "
     "on it."},
    {"run.service_inside",
     "Underground service wire without another marking is not permitted inside a "
     "building."},
    {"run.service_perhaps_inside",
     "Underground service wire is not permitted inside a building; whether this run is"
     " inside is not stated."},
    {"run.not_in_metal",
     "This run is in no metal raceway, metal-clad cable or metal box. Inside a "
     "building, a PV circuit above {volts} or {amperes} must be in one."},
    {"run.metal_unknown",
     "Whether this run is in metal is not stated. Inside a building, a PV circuit "
     "above {volts} or {amperes} must be in metal: raceway, metal-clad cable or box."},
    {"run.laid", "The run has a wire."},
    {"run.wet", "The insulation is rated for wet places."},
    {"run.not_wet", "The insulation has no wet rating: it absorbs water and leaks current."},
    {"run.no_wire_does",
     "No wire in the catalog suits \"{run}\": each lacks the voltage, current or temperature "
     "rating needed there."},
    {"run.state_air_to_choose",
     "State the temperature around \"{run}\" so that a wire can be chosen; until then "
     "its resistance counts as {ohms}."},
    {"run.no_wire_chosen", "no wire chosen"},
    {"run.no_wire", "The run has no wire."},

    {"tail.terminals",
     "Its terminals, {place}, reach {value} by heat conducted from the element; "
     "{what}."},
    {"tail.terminals_allow", "they are rated {limit}"},
    {"tail.terminals_unknown", "their rating is not known"},
    {"tail.buried", "buried in the bed"},
    {"tail.in_box", "in a box outside the wall"},
    {"tail.outside", "outside the wall"},
    {"tail.air_not_stated",
     "The air temperature around it is not stated. It may be far above the assumed {air}, midway "
     "between air and store wall."},
    {"tail.runs_away", "The wire at the terminal reaches no steady temperature: thermal runaway."},
    {"tail.without_store",
     "In the stated surroundings the wire is at {value} where it meets the terminals; "
     "they are rated {limit}. No store is described, so heat conducted down the "
     "element's own pin is not counted."},
    {"tail.state_air", "State the temperature around the element lead to assess the terminals."},
    {"tail.limit_unknown", "The wire is at {value} at the terminals; their rating is not known."},
    {"tail.seals",
     "Its end seals reach {value}; silicone and epoxy withstand {limit} or less. Above"
     " that, moisture enters the magnesia."},
    {"tail.does_nowhere", "It would not be suitable anywhere along this run."},
    {"tail.does_from", "It would be suitable from {distance} beyond the terminal."},
    {"tail.wire", "At the terminal the wire of \"{run}\" is at {value}; {what}."},
    {"tail.insulation_unknown", "its insulation is not known"},
    {"tail.here", "At the terminal it is at {value}; {what}."},
    {"tail.joint_unknown", "the joint there is not known"},
    {"tail.needs", "Its end temperature cannot be computed without {missing}."},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id, "value", "limit">(std::move(given)...);
}

}  // namespace heatmatch::margins_sentences::of_runs
