#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// What this room says of metal that a fault makes live, of steam, and of what a store is made of;
/// the answer lists it. A margin fills {value}, {limit},
/// {low} and {high}.
namespace heatmatch::margins_sentences::of_vessels {

inline constexpr auto table = std::to_array<Template>({
    {"bonding.not_needed",
     "Up to {value}: below {limit} a fault to metal is no shock, so no bond is asked for here."},
    {"bonding.done",
     "Vessel, sheaths and frames are told to be bonded: at up to {value} a fault then has a way to "
     "earth. Test each bond."},
    {"bonding.open",
     "Not bonded: {metal}. After one fault that metal stands at up to {value}; above {limit} it "
     "can "
     "kill who touches it."},
    {"bonding.not_told",
     "Whether these are bonded is not told: {metal}. After one fault they may stand at up to "
     "{value}; above {limit} that can kill who touches them."},
    {"bonding.vessel", "the vessel"},
    {"bonding.sheaths", "the sheaths of the elements"},
    {"bonding.frames", "the frames of the panels"},
    {"pressure.dry", "Nothing in it makes steam."},
    {"pressure.vented",
     "It may reach {value} with nothing taken out and the thermostat welded; a way out for steam "
     "is told. Keep it open, and keep the fill covering the element."},
    {"pressure.closed_hot",
     "With nothing taken out and the thermostat welded it reaches {value}, steam or hot water from "
     "{limit} on, and it has no way out: a closed vessel bursts."},
    {"pressure.closed",
     "It stays at {value}, but it has no way out for steam or for water that expands: a closed "
     "vessel bursts. Fit a vent or a relief valve."},
    {"pressure.not_told",
     "It may reach {value} with nothing taken out; whether steam has a way out is not told. From "
     "{limit} on a closed vessel bursts."},
    {"covered.no_liquid", "There is no liquid in this store that could leave the element bare."},
    {"covered.always", "The liquid is told to cover the element always: look again each month."},
    {"covered.not_always",
     "The liquid does not always cover the element: in air its sheath passes its limit within "
     "minutes."},
    {"covered.not_told",
     "Whether the liquid always covers the element is not told: in air its sheath passes its limit "
     "within minutes."},
    {"floor.wood",
     "Under its hottest spot the wood that the store stands on reaches {value}; wood chars over "
     "years above {limit}: put air or stone between."},
    {"floor.legs",
     "Under its metal legs the floor may reach {value}; wood there chars over years above "
     "{limit}."},
    {"floor.not_told",
     "What the store stands on is not told: wood under it would reach {value}, and chars over "
     "years above {limit}; concrete and bare ground do not char."},
    {"floor.does_not_char",
     "Under its hottest spot the {below} that the store stands on reaches {value}, and {high} with "
     "nothing taken out; it does not char."},
    {"floor.stagnant", "With nothing taken out and the thermostat welded it reaches {high}."},
    {"floor.touch",
     "The bottom of the vessel, where a hand may reach it, gets up to {bottom} then; bare metal "
     "burns within a second above {burns}."},
    {"floor.vessel", "Its bottom gets up to {bottom} then; {material} stands {stands} for years."},
    {"floor.vessel_unknown",
     "Its bottom reaches up to {bottom} then and its material is not given: some plastics "
     "withstand "
     "only {least} for years."},
    {"material.vessel", "vessel"},
    {"material.liner", "liner"},
    {"material.lagging", "lagging"},
    {"material.reaches",
     "With nothing taken out and the thermostat welded the hot side of the {layer} reaches "
     "{value}, in use {low}; {material} stands {limit} for years."},
    {"material.limit_has_to_stop", "The independent limit has to stop it before."},
    {"material.fails", "Not long above {fails} it softens, melts, chars or scales."},
    {"material.not_told",
     "What the {layer} is made of is not told; its hot side may reach {then} with nothing taken "
     "out. State none where there is none."},
    {"material.no_layer", "There is no {layer}."},
    {"material.liquid_needs_vessel", "A liquid needs a vessel: what it is made of is not told."},
    {"material.something_lags",
     "A wall that loses only {u} has something around it: what that is made of is not told."},
    {"material.computed_bare",
     "That is for a bare wall: lagged it is hotter, and how much the lagged wall loses is not "
     "told."},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id, "value", "limit", "low", "high">(std::move(given)...);
}

}  // namespace heatmatch::margins_sentences::of_vessels
