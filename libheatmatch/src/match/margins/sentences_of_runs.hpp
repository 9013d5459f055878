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
     "The code's table must show {value} for it ({factor} times short-circuit current); it shows "
     "{limit}."},
    {"run.table_current_unknown", "The code's current for this wire is not known."},
    {"run.correction_needs_air", "The correction for the heat around it needs its temperature."},
    {"run.corrected_current",
     "It has to carry {value} ({factor} times short-circuit current); the code's table, corrected "
     "for the heat around it{also}, allows {limit}."},
    {"run.also_insulation", " and its insulation's lower limit"},
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
     "{family} insulation is rated {limit} where wet, and soaks and ages early beyond it"},
    {"run.insulation_unknown", "The insulation is not known."},
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
     "The air around it is not stated: it may be far hotter than was assumed."},
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
