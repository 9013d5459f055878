#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// What this room says of a store and of the elements in it; the answer lists it. A margin fills
/// {value}, {limit}, {low} and {high}.
namespace heatmatch::margins_sentences::of_stores {

inline constexpr auto table = std::to_array<Template>({
    {"sheath.no_store",
     "No store is described: how hot things get is not known. In dry sand watts per centimetre of "
     "heated length decide, not rated watts."},
    {"sheath.needs", "How hot it gets needs {missing}."},
    {"sheath.misfit", "It does not fit the store: {misfit}."},
    {"sheath.fits", "Its heated length fits the store; what stuck out would glow in the air."},
    {"sheath.sticks_out",
     "It does not fit: {misfit}. What sticks out of the fill glows in the air."},
    {"sheath.fits_in_liquid",
     "Its heated length fits the store; what the liquid does not cover burns out."},
    {"sheath.sticks_out_of_liquid",
     "It does not fit: {misfit}. What the liquid does not cover burns out."},
    {"sheath.load", "At {load} for {hours} a day"},
    {"sheath.in_fill",
     "{load} the sheath reaches {value}, the fill at its worst and the model's error counted "
     "({low} to {high} by the fill alone); {sheath} stands {limit} for years."},
    {"sheath.gap",
     "The air between rod and fill adds {adds} of that, taken as an even gap of {gap}."},
    {"sheath.in_damp_fill",
     "{load} the damp fill stays damp, and the sheath reaches {value}; let it dry out, and it "
     "reaches {high}. {sheath} stands {limit} for years: keep the fill damp."},
    {"sheath.in_liquid",
     "{load} the sheath reaches {value} in the liquid; {sheath} stands {limit} for years."},
    {"sheath.unknown", "{load} the sheath reaches {value}; what it is made of is not known."},
    {"sheath.coil", "Inside, the coil reaches {value}; its alloy stands {limit}."},
    {"sheath.coil_alone", "Inside, the coil reaches {value}; its alloy is not known."},
    {"sheath.settled",
     "Where the fill settles away from the sheath, the spot reaches {value}; the tube fails soon "
     "above {limit}. Tamp it, and look again after the first weeks."},
    {"sheath.settled_alone", "A settled spot reaches {value}; the sheath is not known."},
    {"sheath.nothing_settles",
     "Nothing here settles; a bored brick or block wants its gap packed."},
    {"sheath.stagnation",
     "Fourteen bright days in the air of high summer, no heat taken out, the thermostat "
     "welded: in a fill that conducts as badly as it may the sheath reaches {value}, in one that "
     "conducts as well as it may {least}; its limit is {limit}{stop}."},
    {"sheath.stagnation_in_liquid",
     "Fourteen bright days in the air of high summer, no heat taken out and the thermostat welded: "
     "the sheath reaches {value}, its limit is {limit}{stop}."},
    {"sheath.stagnation_damp",
     "Fourteen bright days in the air of high summer, no heat taken out and the thermostat welded: "
     "the sheath reaches {value} in the damp fill and {dry} once it has dried; its limit is "
     "{limit}."},
    {"sheath.limit_has_to_stop", "; the independent limit has to stop it before"},
    {"sheath.liquid_does_not_settle", "A liquid does not settle away from the sheath."},
    {"sheath.stagnation_wall", "The wall reaches {low} then."},
    {"sheath.stagnation_alone",
     "After fourteen bright days without a thermostat the sheath reaches {value}; what it is made "
     "of is not known."},
    {"sheath.survivors",
     "If one parallel branch opens, the sheath of the others reaches {value}; it fails at "
     "{limit}."},
    {"sheath.survivors_not_for_years",
     "If one parallel branch opens, the sheath of the others reaches {reached}: more than the "
     "{years} it "
     "lasts at for years; it fails at {limit}."},
    {"sheath.survivors_alone",
     "If one parallel branch opens, the sheath of the others reaches {value}; what it is made of "
     "is not known."},
    {"sheath.survivors_misfit", "What is left does not fit the store."},

    {"store.water", "The water reaches {value}; it boils at {limit}."},
    {"store.water_boils_vented",
     "After some bright days the water boils ({limit}): the vent lets steam out, and water has to "
     "be made up before the element is dry."},
    {"store.water_boils_closed",
     "After some bright days the water boils ({limit}), and no vent or relief is told: a closed "
     "vessel bursts."},
    {"store.ceiling", "At the sheath the fill reaches {value}; {fill} should stay below {limit}."},
    {"store.ceiling_unknown",
     "At the sheath the fill reaches {value}; what it stands is not known."},
    {"store.wood",
     "The hottest spot of wall and lid reaches {value}; wood and board near it char over years "
     "above {limit}: none of it within {clearance}, none on the lid."},
    {"store.wood_near",
     "The hottest spot of wall and lid reaches {value}; wood and board near it may char over years "
     "above {limit}, and {near} leaves little for error: none of it within {clearance}, none on "
     "the lid."},
    {"store.wood_is_away",
     "The hottest spot of wall and lid reaches {value}; what burns is {clearance} away."},
    {"store.wood_stagnant",
     "With nothing taken out and the thermostat welded it reaches {then}, more than wood stands."},
    {"store.wood_not_told", "How far it is was not told."},
    {"store.touch",
     "The hottest spot of wall and lid reaches {value}. Bare metal burns within a second above "
     "{limit}, within a minute above {minute} and within ten above {ten}: guard it."},
    {"store.touch_stagnant", "With nothing taken out and the thermostat welded it reaches {then}."},
    {"store.liquid_is_wet", "A liquid does not dry out; it has to cover the element always."},
    {"store.no_moisture", "Nothing in this fill that moisture would change."},
    {"store.damp_not_told",
     "Whether the fill is damp is not told: damp sand conducts several times better until it has "
     "dried around the rod, and its steam needs a way out."},
    {"store.dry", "The fill was put in dry, and is judged as dry."},
    {"store.dries_out",
     "{load} of rod dries the damp fill around it ({enough} is enough): steam, so dry it slowly "
     "and vented, never sealed."},
    {"store.may_stay_damp", "{load} of rod may leave the fill damp ({enough} dries it)."},
    {"store.kept_damp", "Damp, the sheath is at {low}; dry, at {high}: keep it damp."},
    {"store.damp_and_dry", "Damp, the sheath is at {low}; dry, at {high}: dry counts here."},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id, "value", "limit", "low", "high">(std::move(given)...);
}

}  // namespace heatmatch::margins_sentences::of_stores
