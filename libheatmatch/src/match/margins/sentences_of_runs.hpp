#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// What this room says of runs of wire and of their hot tails; the answer lists it. A margin fills
/// {value} and {limit}.
namespace heatmatch::margins_sentences::of_runs {

inline constexpr auto table = std::to_array<Template>({
    {"run.voltage", "At the record low the {part} stands at {value}; it is rated {limit}."},
    {"run.voltage_alone",
     "At the record low the {part} stands at {value}; its rated voltage is not known."},
    {"run.wire", "wire"},
    {"run.joint", "joint"},
    {"run.table_current",
     "The code's table must show {value} for it{laid} ({factor} times short-circuit current); it "
     "shows {limit}."},
    {"run.table_current_unknown", "The code's current for this wire, laid so, is not known."},
    {"run.more_than_any",
     "The code's table must show {value} for it; laid as it cools best it has {limit}."},
    {"run.no_table_in_bed", "No code has a current for wire in the bed of a store."},
    {"run.one_code_only",
     "The tables of one code have no current for it laid so: state \"code\" of the site."},
    {"run.laid_free_air", ", by itself in free air"},
    {"run.laid_bundle", ", with others that touch it"},
    {"run.laid_raceway", ", in a raceway"},
    {"run.laid_insulation", ", in thermal insulation"},
    {"run.laid_earth", ", in the ground"},
    {"run.laid_terminals", ", at the temperature that its terminals count as"},
    {"run.correction_needs_air", "The correction for the heat around it needs its temperature."},
    {"run.corrected_current",
     "It has to carry {value} ({factor} times short-circuit current); the code's table{laid}, "
     "corrected for the heat around it{also}, allows {limit}."},
    {"run.also", " {also: }"},
    {"run.also_insulation", "and its insulation's lower limit"},
    {"run.also_together", "and for {count} conductors together"},
    {"run.also_roof", "and for {rise} more, close above a roof in the sun"},
    {"run.hotter_than_allowed",
     "It is hotter around the wire than its conductor may get: by the code it may carry nothing, "
     "and it has to carry {value}."},
    {"run.heat", "In the \"{run}\" the conductor reaches {value}; {what}."},
    {"run.field_unknown", "{field} is not known"},
    {"run.judged_in_bed", "It lies in the bed at the element: judged there, as hot tail."},
    {"run.state_air", "State the temperature around \"{run}\" to know how hot its wire gets."},
    {"run.runs_away",
     "The wire of \"{run}\" finds no steady temperature at this current: it runs away."},
    {"run.insulation", "{family} insulation is rated {limit} and melts or chars beyond it"},
    {"run.insulation_wet",
     "{family} insulation is rated {limit} where wet: it soaks and ages early beyond that, and "
     "melts "
     "or chars beyond {dry}"},
    {"run.insulation_wet_unknown",
     "what {family} insulation stands in a wet place is not known, and {limit} is for dry ones"},
    {"run.insulation_dries",
     "Where wet it is rated {wet}: it may be hotter only because that dries it."},
    {"run.insulation_unknown", "The insulation is not known."},
    {"run.wet_limit_unknown", "What its insulation stands in a wet place is not known."},
    {"run.plating", "{metal} oxidises above {limit} and ages early"},
    {"run.bare_metal", "bare {conductor}"},
    {"run.plated_metal", "{plating}-plated {conductor}"},
    {"run.joint_heat", "its joint ({joint}) is rated {limit}"},
    {"run.joint_unknown", "What joins this run at its ends is not known; joints fail first."},
    {"run.joint_current",
     "Its joints have to carry {value} ({factor} times short-circuit current); they are rated "
     "{limit}."},
    {"run.joint_current_alone",
     "Its joints have to carry {value}; their rated current is not known."},
    {"run.sunlight", "The jacket is marked for sunlight."},
    {"run.no_sunlight", "The jacket is not marked for sunlight: it cracks within years."},
    {"run.sunlight_unknown",
     "Whether the jacket stands sunlight is not known: look for the print on it."},
    {"run.out_of_sun", "It lies out of the sun."},
    {"run.dry_place", "It lies in a dry place."},
    {"run.dry_in_bed", "It lies in the bed, where heat keeps it dry: no rating for wet is asked."},
    {"run.may_lie", "A {kind} may lie {where}."},
    {"run.may_not_lie", "A {kind} may not lie {where}."},
    {"run.may_lie_at_element", "A {kind} may lie at the element, as part of the heater."},
    {"run.in_open", "fixed in the open, without a raceway"},
    {"run.outdoors", "outdoors"},
    {"run.in_raceway", "in a raceway"},
    {"run.in_cavity", "in a cavity of a building, without a raceway"},
    {"run.in_bed", "in the bed of a store"},
    {"run.kind_unknown",
     "Where this wire may lie is not known: state the type letters on its jacket as its marking."},
    {"run.not_pv_wire",
     "By the National Electrical Code PV wire may lie there, and this cable is marked by another "
     "standard only."},
    {"run.perhaps_not_pv_wire",
     "This cable is marked by a standard that only one code knows: state \"code\" of the site."},
    {"run.may_be_buried", "It is marked for direct burial."},
    {"run.not_buried",
     "This {kind} is not marked for direct burial: it may not lie in the ground."},
    {"run.burial_unknown",
     "Whether this {kind} may lie in the ground is not known: look for the print on it."},
    {"run.service_inside",
     "Underground service wire that is marked as nothing else may not lie inside a building."},
    {"run.service_perhaps_inside",
     "Underground service wire may not lie inside a building, and where this lies is not stated."},
    {"run.not_in_metal",
     "Inside a building a circuit of panels above {volts} or {amperes} belongs in a metal raceway, "
     "in metal-clad cable or in a metal box; this one lies in none."},
    {"run.metal_unknown",
     "Inside a building a circuit of panels above {volts} or {amperes} belongs in a metal raceway, "
     "in metal-clad cable or in a metal box; that is not stated of it."},
    {"run.laid", "The run has its wire."},
    {"run.wet", "The insulation is rated for wet places."},
    {"run.not_wet", "The insulation has no rating for wet places: it soaks and leaks."},
    {"run.no_wire_does",
     "No wire of the catalog does in \"{run}\": each lacks volts, current or heat resistance "
     "there."},
    {"run.state_air_to_choose",
     "State the temperature around \"{run}\" to have a wire chosen; it counts as {ohms} until "
     "then."},
    {"run.no_wire_chosen", "no wire chosen"},
    {"run.no_wire", "The run has no wire."},

    {"tail.terminals",
     "Its terminals, {place}, reach {value} by the heat that comes down its cold end; {what}."},
    {"tail.terminals_allow", "they allow {limit}"},
    {"tail.terminals_unknown", "what they allow is not known"},
    {"tail.buried", "buried in the bed"},
    {"tail.in_box", "in a box outside the wall"},
    {"tail.outside", "outside the wall"},
    {"tail.air_not_stated",
     "The air around it is not stated: it may be far hotter than the {air} half-way to the store's "
     "wall that was assumed."},
    {"tail.runs_away", "The wire at the terminal finds no steady temperature: it runs away."},
    {"tail.without_store",
     "By the stated surroundings the wire is at {value} where it meets the terminals; they allow "
     "{limit}. Heat that comes down the element's own pin is not counted: no store is described."},
    {"tail.state_air",
     "State the temperature around the run at the element to judge its terminals."},
    {"tail.limit_unknown",
     "The limit of the terminals is not known; the wire there is at {value}."},
    {"tail.seals",
     "Its end seals reach {value}; silicone and epoxy stand {limit} or less, then damp gets into "
     "the magnesia."},
    {"tail.does_nowhere", "It would do nowhere along this run."},
    {"tail.does_from", "It would do from {distance} after the terminal on."},
    {"tail.wire", "At the terminal the wire of \"{run}\" is at {value}; {what}."},
    {"tail.insulation_unknown", "its insulation is not known"},
    {"tail.here", "At the terminal it is at {value}; {what}."},
    {"tail.joint_unknown", "what joins the wire there is not known"},
    {"tail.needs", "How hot its end gets needs {missing}."},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id, "value", "limit">(std::move(given)...);
}

}  // namespace heatmatch::margins_sentences::of_runs
