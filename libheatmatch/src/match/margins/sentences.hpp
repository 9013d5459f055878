#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// The sentences on arrays, elements and devices, and the cautions of every report, listed in
/// answer/sentence_tables.cpp. A margin fills {value}, {limit}, {low} and {high}.
namespace heatmatch::margins_sentences {

inline constexpr auto table = std::to_array<Template>({
    {"array.cold_voltage",
     "Open-circuit string voltage is {value} at the record low; the panels are rated "
     "{limit}."},
    {"array.cold_voltage_alone",
     "Open-circuit string voltage is {value} at the record low. The rated system "
     "voltage of the panels is not known: read the label. Older panels are often rated"
     " {older}."},
    {"array.touch_wet",
     "Up to {value} DC in a wet place can kill. Above {limit} no live part may be "
     "touchable."},
    {"array.touch_dry", "Up to {value} DC can kill. Above {limit} no live part may be touchable."},
    {"array.touch_unstated",
     "Up to {value} DC can kill. Above {limit} no live part may be touchable. Whether "
     "the place is wet is not stated, so it is judged as wet."},
    {"array.touch_enclosed",
     "All live parts are stated to be enclosed. Behind an open cover they are live "
     "whenever there is light."},
    {"array.touch_open", "Live parts are stated to be within reach: cover every one first."},
    {"array.touch_insulation_unknown",
     "Covers are stated, but not every wire is known to be insulated for this voltage."},
    {"array.touch_below", "Up to {value} DC; the limit for touchable parts here is {limit}."},
    {"array.series_arc",
     "Up to {value}: a loose joint can sustain an arc. From {limit}, some codes "
     "require arc-fault protection on or in buildings. Arcs burn below it too."},
    {"array.one_string", "One string: there is no other string to feed current back into it."},
    {"array.reverse_current",
     "The other strings can feed {value} into a faulty string; its panels are rated "
     "for a series fuse of {limit}."},
    {"array.reverse_current_alone",
     "The other strings can feed {value} into a faulty string. The maximum series fuse"
     " rating of the panels is not known: read the label."},
    {"array.reverse_with_fuses",
     "Through string fuses of {fuse}, up to {value} can feed a faulty string. Its "
     "panels are rated for a series fuse of {limit}."},
    {"array.fuse_each", "Fuse each string, or use fewer strings."},
    {"array.one_in_series", "One panel per string: no panel limits another."},
    {"array.mismatch",
     "Panels in series are assumed equal. Measure the short-circuit current of each in"
     " the same hour, and put those within {limit} in one string."},
    {"array.unequal_strings",
     "The strings have {low_v} to {high_v} at their best load: {value} apart, limit {limit}. With "
     "the load open, up to {back} flow backwards."},
    {"array.unequal_panels",
     "At its best load the array delivers {best} of the {sum} of its panels: {lost} ({value}) are "
     "lost, "
     "limit {limit}. Group \"{group}\" has the least current in its string."},
    {"array.bypass_idle", "No bypass diode conducts at this load in bright sun."},
    {"array.bypass_conducts",
     "A bypass diode carries {value} for hours at this load; it is made for {limit}."},
    {"array.panel_not_reversed", "No panel absorbs power at this load in bright sun."},
    {"array.panel_reversed",
     "Stronger panels reverse it: it absorbs {value}, limit {limit}. Cells may overheat."},
    {"array.taken_as_equal", "panels of one group are assumed equal"},

    {"bank.power",
     "Each element receives up to {value} in cold, bright weather; it is rated {limit}"
     " in its intended medium. Dry sand allows far less."},
    {"bank.power_rated",
     "Each element receives up to {value} in cold, bright weather; it is rated {limit}"
     " in its intended medium."},
    {"bank.power_in_liquid",
     "Each element receives up to {value} in cold, bright weather. It is rated "
     "{rated}; {limit} is the maximum in a liquid that always covers it."},
    {"bank.power_above_in_liquid",
     "Each element receives up to {value} in cold, bright weather, above its rated "
     "{rated}. The maximum is {limit}, in a liquid that always covers it."},
    {"bank.power_alone",
     "Each element receives up to {value} in cold, bright weather; its rated power is "
     "not known."},
    {"bank.voltage",
     "Each element has up to {value} across it in cold, bright weather; it is rated "
     "{limit}."},
    {"bank.voltage_alone",
     "Each element has up to {value} across it in cold, bright weather; its rated "
     "voltage is not known."},
    {"bank.sheath_voltage",
     "After one ground fault, {value} is between coil and sheath at the record low. The limit is "
     "{limit}, {peak} times the rated voltage (the peak of an AC rating)."},
    {"bank.sheath_voltage_dc",
     "After one ground fault, {value} is between coil and sheath at the record low; the"
     " rated DC voltage is {limit}."},
    {"bank.sheath_voltage_alone",
     "After one ground fault, the array voltage of {value} is between coil and sheath. "
     "The element's rated voltage is not known."},
    {"bank.bare_voltage",
     "Bare wire makes the bed and the vessel live at up to {value}; above {limit} that"
     " can kill. Never bury it."},
    {"bank.survivor",
     "If one parallel branch opens, each element in the remaining branches receives up to {value}; "
     "it is rated {limit}."},
    {"bank.survivor_alone",
     "If one parallel branch opens, each element in the remaining branches receives up to {value}. "
     "Its rated power is not known."},
    {"bank.one_branch", "One branch: if an element opens, all heating stops."},
    {"bank.insulation",
     "Insulation resistance from coil to sheath is {value}. Below {limit}, damp "
     "magnesia leaks current: dry it out before applying full voltage."},
    {"bank.insulation_alone",
     "Measure insulation resistance from coil to sheath with {volts} before burying. "
     "It must be at least {limit}, and {new} or more when new. A floating array hides "
     "the first ground fault."},
    {"bank.insulation_alone_in_liquid",
     "Measure insulation resistance from coil to sheath with {volts} before filling. "
     "It must be at least {limit}, and {new} or more when new. A floating array hides "
     "the first ground fault."},
    {"bank.bare_voltage_in_liquid",
     "Bare wire makes the liquid and the vessel live at up to {value}; above {limit} "
     "that can kill. Never use it in a liquid."},
    {"bank.bare_wire_in_liquid",
     "Bare wire has no insulation: the liquid and the vessel are live with it."},
    {"bank.bare_wire", "Bare wire has no insulation: the bed and the vessel are live with it."},
    {"bank.built_in",
     "A built-in AC thermostat or cut-out arcs or welds on DC. Bypass it, and limit "
     "the temperature with a device rated for DC."},
    {"bank.nothing_built_in", "No thermostat or cut-out is built in."},
    {"bank.built_in_unknown",
     "Whether a thermostat or cut-out is built in is not known: inspect the element."},
    {"bank.shade",
     "In full sun the panels operate at {value} of short-circuit current. Above {limit}, a shaded "
     "cell and its bypass diode can stay hot for hours. A higher load resistance reduces this."},
    {"bank.drop",
     "Voltage drop in wire and joints is {value}; {limit} is the usual maximum. The same share of "
     "power is lost."},
    {"bank.no_runs", "No wire run is described."},

    {"margin.unstated", "If the unstated facts are as bad as they can be: {then}"},

    {"device.rating", "{volts}, {amperes}"},
    {"device.made_for_ac",
     "Rated for AC only: on {value} DC its contacts sustain an arc or weld closed. It "
     "must not open this circuit."},
    {"device.breaks_volts",
     "It must interrupt {value} DC; it is rated {limit} with the poles used."},
    {"device.breaks_amperes",
     "It must interrupt {value} at the cold voltage of {volts} ({factor} times "
     "short-circuit current); its printed rating allows {limit}."},
    {"device.no_pair",
     "It must interrupt {value}, but no printed rating of voltage and current covers "
     "the poles used."},
    {"device.fuse_volts", "The fuse must clear {value} DC; it is rated {limit}."},
    {"device.fuse_amperes",
     "A fuse below {value} ({factor} times the string's short-circuit current) may blow in bright "
     "sun; this one is {limit}. It does not clear a short circuit that only the panels feed."},
    {"device.fuse_is_no_switch",
     "A fuse or its holder is not a switch: pulled at {value} DC, it sustains an arc. "
     "It must not be used to open this circuit."},
    {"device.fuse_behind_the_joint",
     "It is placed after the point where the strings are joined, so it isolates no "
     "string. Each string needs its own."},
    {"device.fuse_breaks_one_way",
     "It interrupts current in one direction only; a faulty string is fed in the "
     "other. It protects no string."},
    {"device.no_fuse", "It is not a fuse and does not trip on current: it protects no string."},
    {"device.fuse_wire",
     "The string fuse is {value}; the maximum fuse for the wire of \"{run}\" is "
     "{limit}."},
    {"device.fuse_wire_alone",
     "The string fuse is {value}; the wire that it must protect is not known."},
    {"device.fuse_rating_unknown", "The rating of the string fuse is not known."},
    {"device.fuse_without_rating", "The fuse has no DC rating; the string voltage is {value}."},
    {"device.carries",
     "It must carry {value} ({factor} times short-circuit current); its contacts or "
     "shunt are rated {limit}. It may arc if opened under load."},
    {"device.shared_poles",
     "{circuits} circuits pass through it and need {value} poles; it has {limit}. Through a common "
     "pole they would be one circuit."},
    {"device.shared_poles_alone",
     "{circuits} circuits pass through it and need {value} poles; how many it has is not known."},
    {"device.carries_alone",
     "It must carry {value}; the rating of its contacts or shunt is not known."},
    {"device.polarised",
     "It interrupts current in one direction only. Wire plus and minus, line and load,"
     " as marked, or it burns when opened."},
    {"device.polarised_in_string",
     "It interrupts current in one direction only. The other strings can feed a faulty"
     " string through it in reverse: if opened then, it burns. Use a device rated for "
     "both directions, or fuses."},
    {"device.melts_either_way", "A fuse melts in either direction of current."},
    {"device.polarity_assumed_in_string",
     "Whether it interrupts current in both directions is not stated. The other "
     "strings can feed a faulty string through it in reverse. Read the label; use a "
     "device rated for both directions, or fuses."},
    {"device.polarity_assumed",
     "Whether it interrupts current in both directions is not stated, so one direction"
     " is assumed. Wire it as marked, or read the label."},
    {"device.either_way", "It interrupts current in both directions."},
    {"device.body", "The air around it is at {value}; the device itself is rated {limit}."},
    {"device.body_unknown", "The temperature of its own body is not known."},
    {"device.senses_in_run",
     "It is a sensing device, yet it is placed in the run \"{run}\". Use it to drive a"
     " contactor rated for this DC."},
    {"device.disconnect", "\"{name}\" opens all conductors together by hand."},
    {"device.no_disconnect",
     "No disconnect rated for DC is described: pulling a plug under load draws an arc."},
    {"device.bad_disconnect",
     "No described device serves as a disconnect; \"{name}\" does not: {why}"},
    {"device.limit",
     "\"{name}\" does not reset by itself and opens the circuit through \"{breaker}\". Test that "
     "it trips."},
    {"device.common_cause",
     "The thermostat opens the same contacts: if they weld, neither device stops the "
     "heat."},
    {"device.no_limit",
     "No independent overtemperature limit that stays open is described: a welded thermostat would "
     "go unnoticed."},
    {"device.limit_opens_nothing",
     "The overtemperature limit \"{name}\" is not known to open this circuit: {why}"},

    {"caution.volts",
     "DC above {dry} ({wet} where wet) can kill, and its arcs do not go out by "
     "themselves."},
    {"caution.switches",
     "Switches and thermostats rated for AC arc or weld closed on DC. Never open a plug "
     "under load."},
    {"caution.cold", "No part may exceed its voltage rating at the record low."},
    {"caution.bonding",
     "Bond the metal vessel, the sheath and the panel frames. Check for ground faults: "
     "a broken coil can arc through its sheath."},
    {"caution.combustibles", "Keep combustibles away; no cardboard or wood near the store."},
    {"caution.limit", "Use an independent overtemperature limit that does not reset by itself."},
    {"caution.steam", "Damp sand makes steam when heated: dry it slowly and vented, never sealed."},
    {"caution.dust", "Silica dust harms lungs; hot metal and hot sand burn."},
    {"caution.vessel",
     "A closed vessel bursts when its liquid boils. It needs a vent, or a relief valve"
     " sized for the steam."},
    {"caution.covered", "Liquid must cover the element whenever there is light on the panels."},
    {"caution.scalding", "Hot liquid and steam scald; hot metal burns."},
    {"caution.first_fire", "Never leave the first heating unattended; fit a smoke alarm."},
    {"caution.immersion", "Never apply rated voltage to an immersion element in dry sand."},
    {"caution.codes",
     "Local codes and licensed practice decide. These are estimates; they approve nothing."},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id, "value", "limit", "low", "high">(std::move(given)...);
}

}  // namespace heatmatch::margins_sentences
