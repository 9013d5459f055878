#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// The sentences on a store and its elements, listed in answer/sentence_tables.cpp. A margin fills
/// {value}, {limit}, {low} and {high}.
namespace heatmatch::margins_sentences::of_stores {

inline constexpr auto table = std::to_array<Template>({
    {"sheath.no_store",
     "No store is described, so temperatures are not known. In dry sand, watts per "
     "centimeter of heated length decide, not rated power."},
    {"sheath.needs", "Its temperature cannot be computed without {missing}."},
    {"sheath.misfit", "It does not fit the store: {misfit}."},
    {"sheath.fits",
     "Its heated length fits the store. Heated length outside the fill would glow in the air."},
    {"sheath.sticks_out",
     "It does not fit: {misfit}. Heated length outside the fill glows in the air."},
    {"sheath.fits_in_liquid",
     "Its heated length fits the store. Heated length above the liquid burns out."},
    {"sheath.sticks_out_of_liquid",
     "It does not fit: {misfit}. Heated length above the liquid burns out."},
    {"sheath.load", "At {load} for {hours} a day"},
    {"sheath.in_fill",
     "{load} the sheath reaches {value}; {sheath} withstands {limit} for years. The value is for "
     "the worst fill and includes model error. Without model error, the range of the fill is {low} "
     "to {high}."},
    {"sheath.gap",
     "Of that rise, {adds} is from air between rod and fill, modeled as an even gap of {gap}."},
    {"sheath.in_damp_fill",
     "{load} the sheath reaches {value} while the fill stays damp, and {high} once it "
     "dries. {sheath} withstands {limit} for years: keep the fill damp."},
    {"sheath.in_liquid",
     "{load} the sheath reaches {value} in the liquid; {sheath} withstands {limit} for"
     " years."},
    {"sheath.unknown", "{load} the sheath reaches {value}; its material is not known."},
    {"sheath.coil", "Inside, the coil reaches {value}; its alloy withstands {limit}."},
    {"sheath.coil_alone", "Inside, the coil reaches {value}; its alloy is not known."},
    {"sheath.settled",
     "Where the fill settles away from the sheath, the bare spot reaches {value}; above {limit} "
     "the tube soon fails. Tamp the fill, and inspect it after the first weeks."},
    {"sheath.settled_alone", "A settled spot reaches {value}; the sheath is not known."},
    {"sheath.nothing_settles", "Nothing here settles. In a bored brick or block, pack the gap."},
    {"sheath.stagnation",
     "In stagnation the sheath reaches {value}; its limit is {limit}{stop}. Stagnation"
     " is fourteen bright days in high summer, no heat drawn and the thermostat welded"
     " closed. The value is for the lowest conductivity of the fill; at the highest "
     "the sheath reaches {least}."},
    {"sheath.stagnation_in_liquid",
     "In stagnation the sheath reaches {value}; its limit is {limit}{stop}. Stagnation"
     " is fourteen bright days in high summer, no heat drawn and the thermostat welded"
     " closed."},
    {"sheath.stagnation_damp",
     "In stagnation the sheath reaches {value} in the damp fill, and {dry} once it has"
     " dried; its limit is {limit}. Stagnation is fourteen bright days in high summer,"
     " no heat drawn and the thermostat welded closed."},
    {"sheath.limit_has_to_stop", "; the independent limit must stop it before that"},
    {"sheath.liquid_does_not_settle", "A liquid does not settle away from the sheath."},
    {"sheath.stagnation_wall",
     "The hottest spot of the wall then reaches {low}, that of the lid {lid}."},
    {"sheath.stagnation_alone",
     "After fourteen bright days without a thermostat the sheath reaches {value}; its "
     "material is not known."},
    {"sheath.survivors",
     "If one parallel branch opens, a sheath in the remaining branches reaches {value}; it fails "
     "at {limit}."},
    {"sheath.survivors_not_for_years",
     "If one parallel branch opens, a sheath in the remaining branches reaches {reached}. That is "
     "above {years}, its limit for years of use; it fails at {limit}."},
    {"sheath.survivors_alone",
     "If one parallel branch opens, a sheath in the remaining branches reaches {value}; its "
     "material is not known."},
    {"sheath.survivors_misfit", "The remaining elements do not fit the store."},

    {"store.water", "The water reaches {value}; it boils at {limit}."},
    {"store.water_boils_vented",
     "After some bright days the water boils ({limit}). The vent releases steam: add "
     "water before the element is dry."},
    {"store.water_boils_closed",
     "After some bright days the water boils ({limit}), and no vent or relief valve is"
     " stated: a closed vessel bursts."},
    {"store.ceiling", "At the sheath the fill reaches {value}; {fill} should stay below {limit}."},
    {"store.ceiling_unknown", "At the sheath the fill reaches {value}; its limit is not known."},
    {"store.wood",
     "On a bright day the hottest spot of wall and lid reaches {value}; wood and board near it "
     "char "
     "over years above {limit}. Keep them {clearance} away, and off the lid."},
    {"store.wood_near",
     "On a bright day the hottest spot of wall and lid reaches {value}; wood and board near it may "
     "char over years "
     "above {limit}. Above {near} little room is left for error. Keep them {clearance} away, and "
     "off the lid."},
    {"store.wood_is_away",
     "On a bright day the hottest spot of wall and lid reaches {value}; combustibles are "
     "{clearance} "
     "away."},
    {"store.wood_stagnant",
     "With no heat drawn and the thermostat welded closed it reaches {then}, above the"
     " limit for wood."},
    {"store.wood_not_told", "Their distance is not stated."},
    {"store.touch",
     "On a bright day the hottest spot of wall and lid reaches {value}: guard it. Bare metal burns "
     "skin within a second above {limit}, within a minute above {minute}, and within "
     "ten minutes above {ten}."},
    {"store.touch_stagnant",
     "With no heat drawn and the thermostat welded closed it reaches {then}."},
    {"store.liquid_is_wet", "A liquid does not dry out; it must always cover the element."},
    {"store.no_moisture", "Moisture changes nothing in this fill."},
    {"store.damp_not_told",
     "Whether the fill is damp is not stated. Damp sand conducts several times better "
     "until it has dried around the rod. Its steam must be vented."},
    {"store.dry", "The fill was put in dry, and is judged as dry."},
    {"store.dries_out",
     "{load} of rod dries the damp fill around it; {enough} is enough. That makes "
     "steam: dry it slowly and vented, never sealed."},
    {"store.may_stay_damp", "{load} of rod may leave the fill damp ({enough} dries it)."},
    {"store.kept_damp",
     "The sheath is at {low} in damp fill and at {high} in dry fill: keep it damp."},
    {"store.damp_and_dry",
     "The sheath is at {low} in damp fill and at {high} in dry fill; the dry value is judged."},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id, "value", "limit", "low", "high">(std::move(given)...);
}

}  // namespace heatmatch::margins_sentences::of_stores
