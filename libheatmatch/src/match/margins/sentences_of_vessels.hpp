#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// The sentences on metal that a fault makes live, on steam and on the materials of a store, listed
/// in answer/sentence_tables.cpp. A margin fills {value}, {limit}, {low} and {high}.
namespace heatmatch::margins_sentences::of_vessels {

inline constexpr auto table = std::to_array<Template>({
    {"bonding.not_needed",
     "A fault to metal puts up to {value} on it; the touch voltage limit used is {limit}. A code "
     "may require a bond at any voltage."},
    {"bonding.done",
     "Vessel, sheaths and frames are stated to be bonded. A fault at up to {value} "
     "then has a path to ground. Test each bond."},
    {"bonding.open",
     "Not bonded: {metal}. After one fault that metal is live at up to {value}; above "
     "{limit} it can kill anyone who touches it."},
    {"bonding.not_told",
     "Whether these are bonded is not stated: {metal}. After one fault they may be "
     "live at up to {value}; above {limit} that can kill anyone who touches them."},
    {"bonding.vessel", "the vessel"},
    {"bonding.sheaths", "the sheaths of the elements"},
    {"bonding.frames", "the frames of the panels"},
    {"pressure.dry", "Nothing in it makes steam."},
    {"pressure.vented",
     "It may reach {value} with no heat drawn and the thermostat welded closed; a vent"
     " for steam is stated. Keep it open, and keep the fill covering the element."},
    {"pressure.closed_hot",
     "It has no vent: a closed vessel bursts. With no heat drawn and the thermostat "
     "welded closed it reaches {value}; from {limit} it holds steam or hot water."},
    {"pressure.closed",
     "It has no vent for steam or for expanding water: a closed vessel bursts. It "
     "stays at {value}. Fit a vent or a relief valve."},
    {"pressure.not_told",
     "It may reach {value} with no heat drawn; whether steam is vented is not stated. "
     "From {limit} a closed vessel bursts."},
    {"covered.no_liquid", "This store holds no liquid that could uncover the element."},
    {"covered.always", "The liquid is stated to cover the element always: check again each month."},
    {"covered.not_always",
     "The liquid does not always cover the element: in air its sheath exceeds its "
     "limit within minutes."},
    {"covered.not_told",
     "Whether the liquid always covers the element is not stated: in air its sheath "
     "exceeds its limit within minutes."},
    {"floor.wood",
     "Wood under the hottest spot of the store reaches {value}; wood chars over years "
     "above {limit}. Put air or stone between."},
    {"floor.legs",
     "The floor under its metal legs may reach {value}; wood there chars over years "
     "above {limit}."},
    {"floor.not_told",
     "What is under the store is not stated. Wood there would reach {value}, and chars"
     " over years above {limit}. Concrete and bare ground do not char."},
    {"floor.does_not_char",
     "The {below} under the hottest spot of the store reaches {value}, and {high} with"
     " no heat drawn. It does not char."},
    {"floor.stagnant", "With no heat drawn and the thermostat welded closed it reaches {high}."},
    {"floor.touch",
     "The bottom of the vessel, where a hand can reach it, then gets up to {bottom}. "
     "Bare metal burns skin within a second above {burns}."},
    {"floor.vessel",
     "Its bottom then gets up to {bottom}; {material} withstands {stands} for years."},
    {"floor.vessel_unknown",
     "Its bottom then reaches up to {bottom}, and its material is not stated: some "
     "plastics withstand only {least} for years."},
    {"material.vessel", "vessel"},
    {"material.liner", "liner"},
    {"material.lagging", "insulation jacket"},
    {"material.reaches",
     "With no heat drawn and the thermostat welded closed, the hot side of the {layer}"
     " reaches {value}. In use it reaches {low}; {material} withstands {limit} for "
     "years."},
    {"material.limit_has_to_stop", "The independent limit must stop it before that."},
    {"material.fails", "Soon above {fails} it softens, melts, chars or scales."},
    {"material.not_told",
     "The material of the {layer} is not stated; its hot side may reach {then} with no"
     " heat drawn. State \"none\" where there is none."},
    {"material.no_layer", "There is no {layer}."},
    {"material.liquid_needs_vessel",
     "A liquid needs a vessel, and the vessel's material is not stated."},
    {"material.something_lags",
     "A wall that loses only {u} must have an insulation jacket; its material is not "
     "stated."},
    {"material.computed_bare",
     "That is for a bare wall. Under a jacket it is hotter, and the heat loss of the "
     "insulated wall is not stated."},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id, "value", "limit", "low", "high">(std::move(given)...);
}

}  // namespace heatmatch::margins_sentences::of_vessels
