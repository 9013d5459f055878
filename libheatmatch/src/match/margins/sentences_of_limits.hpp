#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// The sentences on limits and sensing devices, listed in answer/sentence_tables.cpp. A margin
/// fills {value}, {limit}, {low} and {high}.
namespace heatmatch::margins_sentences::of_limits {

inline constexpr auto table = std::to_array<Template>({
    {"limit.sheath", "the sheath is above its limit by then"},
    {"limit.sheath_unknown", "the limit of the sheath is not known"},
    {"limit.coil", "the coil is above its limit by then"},
    {"limit.water", "the water boils before that"},
    {"limit.material", "vessel, liner or jacket is above its limit by then"},
    {"limit.wood", "wall or lid is above the limit for wood by then"},
    {"limit.floor", "wood under the store, if any, is above its limit by then"},
    {"limit.touch", "wall or lid burns a hand by then"},
    {"limit.no_set", "its set point is not stated"},
    {"limit.space", "when the space reaches its set point cannot be determined"},
    {"limit.not_in_water", "in water it must sense the water itself"},
    {"limit.water_set", "in water its set point must be {most} or less"},

    {"limit.none_acts", "No overtemperature limit is described that could stop stagnation."},
    {"limit.no_heat",
     "Whether the limit trips in time is not known: that requires the store and its "
     "elements."},
    {"limit.acts",
     "With no heat drawn and the thermostat welded closed, \"{name}\" opens by bright "
     "day {day}. That is before sheath, coil, wood, touch, water or materials exceed "
     "their limits."},
    {"limit.not_called",
     "With no heat drawn, no checked part exceeds its limit, and the overtemperature limit does "
     "not trip."},
    {"limit.opens_nothing",
     "\"{name}\" is not known to open this circuit when no heat is drawn. {why}"},
    {"limit.late", "\"{name}\" opens too late when no heat is drawn: {first}."},
    {"limit.may_be_late",
     "Whether \"{name}\" opens in time when no heat is drawn is not known: {first}."},

    {"limit.not_all",
     "\"{name}\" is not counted: no limit is certain to open circuit \"{circuit}\" of the same "
     "store "
     "in time."},
    {"limit.none_fails", "No described limit could open without supply."},
    {"limit.supply_keeps",
     "Without control supply the circuit stays closed: the limit cannot open it then."},
    {"limit.probe_keeps",
     "With a broken probe the circuit stays closed: the limit cannot trip then."},
    {"limit.supply_not_told",
     "Whether the circuit opens without control supply, and with a broken probe, is "
     "not stated. Disconnect each in turn and check."},
    {"limit.supply_of_nothing",
     "\"{name}\" is not known to open this circuit, with or without supply: {why}"},
    {"limit.supply_opens", "Without control supply, or with a broken probe, the circuit opens."},

    {"limit.body",
     "Its body reaches the temperature that it senses, {value}; it is rated {limit}."},
    {"limit.probe",
     "Its probe reaches the temperature that it senses, {value}; it is rated {limit}."},
    {"limit.body_unknown", "The temperature where it senses, or its own rating, is not known."},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id, "value", "limit", "low", "high">(std::move(given)...);
}

}  // namespace heatmatch::margins_sentences::of_limits
