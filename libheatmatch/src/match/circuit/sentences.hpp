#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// What this room says; the answer lists it.
namespace heatmatch::circuit_sentences {

inline constexpr auto table = std::to_array<Template>({
    {"circuit.hookup", "{example} is two in series, one string"},
    {"circuit.warmest_month", "daily high of the warmest month"},
    {"circuit.above_warmest_month", "daily high of the warmest month + {rise}"},
    {"circuit.run_in_bed", "the run at the element is said to lie in the bed"},
    {"circuit.around_run", "from what is around the run at the element"},
    {"circuit.air_at_wall", "half-way from {air} to the store's wall"},
    {"circuit.air_beside_store", "air around the store, and the film of it along its wall"},
    {"circuit.lagging_by_loss", "mineral wool of {wool}, by the heat loss stated for the wall"},
    {"opens.other_duty", "It is not listed to break direct current."},
    {"opens.fuse", "A fuse or its holder is no switch: pulled under load it holds an arc."},
    {"opens.made_for_ac", "It is made for alternating current only."},
    {"opens.semiconductor", "It switches by a semiconductor, which leaks and fails shorted."},
    {"opens.semiconductor_not_told", "Whether it switches by a semiconductor is not told."},
    {"opens.volts", "It has to break {volts} and is rated for {rated} with the poles used."},
    {"opens.amperes", "It has to break {amperes} at {volts} and is rated for {rated} there."},
    {"opens.no_run", "It sits in no run of the circuit."},
    {"opens.part", "It opens one string or branch; the others stay closed."},
    {"opens.how_not_told", "What makes it open is not told."},
    {"opens.no_hand", "It is not opened by hand."},
    {"opens.hand", "A hand opens all conductors together."},
    {"opens.poles_not_told", "How many conductors it opens is not told."},
    {"opens.one_conductor",
     "It opens one conductor only: after an earth fault the other one still carries the array."},
    {"opens.one_side",
     "After an earth fault the poles in one conductor have to break {volts} by themselves; they "
     "are rated for {rated}."},
    {"opens.drives_not_told", "What it makes open is not told."},
    {"opens.drives_none", "What it is told to make open is not here."},
    {"opens.driven", "It makes \"{breaker}\" open."},
    {"opens.not_commanded", "Nothing else can make it open."},
    {"opens.itself", "Its contacts open the circuit."},
    {"opens.closes_again", "It closes again by itself."},
    {"opens.not_set", "What it is set to is not told."},
    {"opens.out_of_range", "It is set to {set} and made for {low} to {high}."},
    {"opens.above_range", "It is set to {set} and made for {high} at most."},
    {"opens.driver_not_told", "Whether anything that senses makes it open is not told."},
    {"opens.undriven", "Nothing that senses makes it open."},
    {"opens.not_blown",
     "The other strings feed it {fed}; it takes {needed} to be sure that it blows."},
    {"opens.behind_the_joint",
     "It sits where the strings are joined already: it parts no string from the others."},
    {"opens.blows", "The other strings blow it when one fails."},
    {"opens.cuts_the_earth", "It cuts the connection to earth, not the circuit."},
    {"opens.no_fault", "No fault makes it open."},
    {"circuit.chosen_as_for", "chosen as for {air} around it: nothing is stated"},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id>(std::move(given)...);
}

}  // namespace heatmatch::circuit_sentences
