#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// What this room says of limits and of what senses; the answer lists it. A margin fills {value},
/// {limit}, {low} and {high}.
namespace heatmatch::margins_sentences::of_limits {

inline constexpr auto table = std::to_array<Template>({
    {"limit.sheath", "the sheath is past its limit by then"},
    {"limit.sheath_unknown", "what the sheath stands is not known"},
    {"limit.coil", "the coil is past its limit by then"},
    {"limit.water", "the water boils before"},
    {"limit.material", "vessel, liner or lagging is past its limit by then"},
    {"limit.wood", "wall or lid is past what wood stands by then"},
    {"limit.floor", "what the store stands on, if it is wood, is past what wood stands by then"},
    {"limit.touch", "wall or lid burns a hand by then"},
    {"limit.no_set", "what it is set to is not told"},
    {"limit.space", "when the space reaches its set point cannot be told"},
    {"limit.not_in_water", "in water it has to sense the water itself"},
    {"limit.water_set", "in water it may be set to {most} at most"},

    {"limit.none_acts", "No limit is listed that could stop a stagnation."},
    {"limit.no_heat",
     "Whether the limit acts in time is not known: that needs the store and its elements."},
    {"limit.acts",
     "With nobody taking the heat and the thermostat welded, \"{name}\" opens by bright day {day}, "
     "before sheath, coil, wood, touch, water or materials pass their limits."},
    {"limit.not_called",
     "With nobody taking the heat nothing passes its limit, and the limit is not called."},
    {"limit.opens_nothing",
     "\"{name}\" is not counted on to stop a stagnation: it is not known to open this circuit. "
     "{why}"},
    {"limit.late", "\"{name}\" is not counted on to stop a stagnation: {first}."},

    {"limit.none_fails", "No limit is listed that could open without supply."},
    {"limit.supply_keeps",
     "Without control supply the circuit stays closed: the limit cannot open it then."},
    {"limit.probe_keeps", "With a broken probe the circuit stays closed: the limit is blind then."},
    {"limit.supply_not_told",
     "Whether the circuit opens without control supply, and with a broken probe, is not told: pull "
     "off each and see."},
    {"limit.supply_of_nothing",
     "\"{name}\" is not known to open this circuit, with supply or without: {why}"},
    {"limit.supply_opens", "Without control supply, or with a broken probe, the circuit opens."},

    {"limit.body", "It is as hot as what it senses, {value}; its own body may reach {limit}."},
    {"limit.probe", "Its probe is as hot as what it senses, {value}; it is made for {limit}."},
    {"limit.body_unknown", "How hot it gets where it senses, or what it stands, is not known."},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id, "value", "limit", "low", "high">(std::move(given)...);
}

}  // namespace heatmatch::margins_sentences::of_limits
