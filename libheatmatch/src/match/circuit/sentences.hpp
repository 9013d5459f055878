#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// The sentences of this room, listed in answer/sentence_tables.cpp.
namespace heatmatch::circuit_sentences {

inline constexpr auto table = std::to_array<Template>({
    {"circuit.fewer_elements", "split the bank into several circuits"},
    {"circuit.panels_used", "\"{layout}\" ({count} panels of group \"{group}\")"},
    {"circuit.panels_owned", "at most the {count} of group \"{group}\""},
    {"circuit.read_groups", "read its groups and its strings instead"},
    {"circuit.use_fewer", "use fewer panels, or correct the count of the group"},
    {"circuit.fixed_elements",
     "the resistance of lamps and PTC heaters varies too much to divide the power"},
    {"circuit.unlike_elements", "read the heat of each element of the bank"},
    {"circuit.hookup", "{example} is two in series, one string"},
    {"circuit.warmest_month", "daily high of the warmest month"},
    {"circuit.above_warmest_month", "daily high of the warmest month + {rise}"},
    {"circuit.run_in_bed", "the element lead is stated to lie in the bed"},
    {"circuit.around_run", "from the surroundings of the element lead"},
    {"circuit.air_at_wall", "half-way from {air} to the store's wall"},
    {"circuit.air_beside_store", "air around the store, and its film along the wall"},
    {"circuit.lagging_by_loss", "mineral wool of {wool}, from the stated heat loss of the wall"},
    {"circuit.legs_under_lid", "the legs do not fit above {stated}"},
    {"circuit.side_by_side", "side by side"},
    {"circuit.order_of_circuits", "in the order of the circuits"},
    {"circuit.order_of_text", "in the order of the text"},
    {"opens.other_duty", "Breaking DC is not its stated duty."},
    {"opens.fuse", "A fuse or its holder is not a switch: pulled under load, it sustains an arc."},
    {"opens.made_for_ac", "It is rated for AC only."},
    {"opens.semiconductor",
     "It switches with a semiconductor, which leaks current and fails shorted."},
    {"opens.semiconductor_not_told", "Whether it switches with a semiconductor is not stated."},
    {"opens.volts", "It must interrupt {volts}; it is rated {rated} with the poles used."},
    {"opens.amperes", "It must interrupt {amperes} at {volts}; it is rated {rated} there."},
    {"opens.shared_not_told",
     "{circuits} circuits pass through it; how many poles it has is not stated."},
    {"opens.shared",
     "{circuits} circuits pass through it and need {needed} poles; it has {poles}."},
    {"opens.no_run", "It is placed in no run of the circuit."},
    {"opens.part", "It opens one string or branch; the others stay closed."},
    {"opens.how_not_told", "How it opens is not stated."},
    {"opens.no_hand", "It cannot be opened by hand."},
    {"opens.hand", "A hand opens all conductors together."},
    {"opens.poles_not_told", "How many conductors it opens is not stated."},
    {"opens.one_conductor",
     "It is single-pole: after a ground fault the other conductor still carries the "
     "array current."},
    {"opens.one_side",
     "After a ground fault, the poles in one conductor alone must interrupt {volts}; "
     "they are rated {rated}."},
    {"opens.drives_not_told", "The device that it opens is not stated."},
    {"opens.drives_none", "The device that it is stated to open is not described."},
    {"opens.driven", "It opens \"{breaker}\"."},
    {"opens.not_commanded", "No other device can open it."},
    {"opens.itself", "Its contacts open the circuit."},
    {"opens.closes_again", "It closes again by itself."},
    {"opens.not_set", "Its set point is not stated."},
    {"opens.out_of_range", "Its set point is {set}; it is rated for {low} to {high}."},
    {"opens.above_range", "Its set point is {set}; it is rated for {high} at most."},
    {"opens.driver_not_told", "Whether any sensing device opens it is not stated."},
    {"opens.undriven", "No sensing device opens it."},
    {"opens.not_blown",
     "The other strings feed it {fed}; it is certain to blow only from {needed}."},
    {"opens.behind_the_joint",
     "It is placed after the point where the strings are joined: it isolates no "
     "string."},
    {"opens.blows", "The other strings blow it when one fails."},
    {"opens.cuts_the_earth", "It opens the connection to earth, not the circuit."},
    {"opens.no_fault", "It does not open on a fault."},
    {"circuit.chosen_as_for", "chosen for {air} around it: no air temperature is stated"},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id>(std::move(given)...);
}

}  // namespace heatmatch::circuit_sentences
