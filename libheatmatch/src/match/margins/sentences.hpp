#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// What this room says of arrays, elements and devices, and the cautions of every report; the
/// answer lists it. A margin fills {value}, {limit}, {low} and {high}.
namespace heatmatch::margins_sentences {

inline constexpr auto table = std::to_array<Template>({
    {"array.cold_voltage",
     "At the record low the open string stands at {value}; the panels allow {limit}."},
    {"array.cold_voltage_alone",
     "At the record low the open string stands at {value}; what the panels allow is not known: "
     "read the label (older ones often allow {older})."},
    {"array.touch_wet",
     "Up to {value} direct current in a wet place: above {limit} no live part may be touchable. It "
     "can kill."},
    {"array.touch_dry",
     "Up to {value} direct current: above {limit} no live part may be touchable. It can kill."},
    {"array.touch_unstated",
     "Up to {value} direct current. Whether the place is wet is not stated: it counts as wet, and "
     "above {limit} no live part may be touchable. It can kill."},
    {"array.touch_enclosed",
     "Every live part is stated to be enclosed; behind an open cover it is live whenever there is "
     "light."},
    {"array.touch_open", "Live parts are stated to be within reach: cover every one first."},
    {"array.touch_insulation_unknown",
     "Covers are stated, but not every wire is known to be insulated for these volts."},
    {"array.touch_below",
     "Up to {value} direct current; the limit for touchable parts here is {limit}."},
    {"array.series_arc",
     "Up to {value}: a loose joint can hold an arc. From {limit} on, some codes ask for arc-fault "
     "protection on or in buildings; arcs burn below it too."},
    {"array.one_string", "One string: no other can feed it backwards."},
    {"array.reverse_current",
     "A faulty string can be fed {value} by the others; its panels allow a series fuse of "
     "{limit}."},
    {"array.reverse_current_alone",
     "A faulty string can be fed {value} by the others; the largest series fuse of the panels is "
     "not known: read the label."},
    {"array.reverse_with_fuses",
     "With string fuses of {fuse} a faulty string can be fed {value}; its panels allow {limit}."},
    {"array.fuse_each", "Fuse each string, or use fewer strings."},
    {"array.one_in_series", "One panel in each string: none limits another."},
    {"array.mismatch",
     "Panels in series count as equal here; measure each one's short-circuit current in the same "
     "hour and keep those within {limit} together."},
    {"array.taken_as_equal", "panels of one group are taken as equal"},

    {"bank.power",
     "In bright cold one element takes up to {value}; it is rated {limit} in the medium it was "
     "made for. Dry sand allows far less."},
    {"bank.power_rated",
     "In bright cold one element takes up to {value}; it is rated {limit} in the medium it was "
     "made for."},
    {"bank.power_in_liquid",
     "In bright cold one element takes up to {value}; it is rated {rated}, and may take {limit} at "
     "most in a liquid that always covers it."},
    {"bank.power_above_in_liquid",
     "In bright cold one element takes up to {value}, more than the {rated} it is rated for; "
     "{limit} is the most in a liquid that always covers it."},
    {"bank.power_alone",
     "In bright cold one element takes up to {value}; its rated watts are not known."},
    {"bank.voltage",
     "In bright cold one element has up to {value} across it; it is rated {limit}."},
    {"bank.voltage_alone",
     "In bright cold one element has up to {value} across it; its rated volts are not known."},
    {"bank.sheath_voltage",
     "After one earth fault the whole array stands between coil and sheath: {value} on the coldest "
     "morning; {peak} times its rated voltage (the peak, if it is rated for alternating current) "
     "is {limit}."},
    {"bank.sheath_voltage_dc",
     "After one earth fault the whole array stands between coil and sheath: {value} on the coldest "
     "morning; its rated direct voltage is {limit}."},
    {"bank.sheath_voltage_alone",
     "After one earth fault the whole array stands between coil and sheath: {value}; the element's "
     "rated volts are not known."},
    {"bank.bare_voltage",
     "It is bare wire: the bed and the vessel stand at up to {value} with it, and above {limit} "
     "that can kill. Never bury it."},
    {"bank.survivor",
     "If one parallel branch opens, an element of the others takes up to {value}; it is rated "
     "{limit}."},
    {"bank.survivor_alone",
     "If one parallel branch opens, an element of the others takes up to {value}; its rated watts "
     "are not known."},
    {"bank.one_branch", "One branch: if an element opens, nothing heats."},
    {"bank.insulation",
     "Sheath to coil measures {value}; below {limit} damp magnesia leaks and has to be dried out "
     "before full volts."},
    {"bank.insulation_alone",
     "Measure sheath to coil with {volts} before burying: at least {limit}, and {new} or more when "
     "new. A floating array hides the first earth fault."},
    {"bank.insulation_alone_in_liquid",
     "Measure sheath to coil with {volts} before filling: at least {limit}, and {new} or more when "
     "new. A floating array hides the first earth fault."},
    {"bank.bare_voltage_in_liquid",
     "It is bare wire: the liquid and the vessel stand at up to {value} with it, and above {limit} "
     "that can kill. Never use it in a liquid."},
    {"bank.bare_wire_in_liquid",
     "It is bare wire: nothing stands between it and the liquid, which is live with it, and the "
     "vessel too."},
    {"bank.bare_wire",
     "It is bare wire: nothing stands between it and the bed, which is live with it, and the "
     "vessel too."},
    {"bank.built_in",
     "A thermostat or cut-out for alternating current is inside: on direct current it arcs or "
     "welds. Bypass it, and limit by a rated device."},
    {"bank.nothing_built_in", "No thermostat or cut-out is inside."},
    {"bank.built_in_unknown", "Whether a thermostat or cut-out is inside is not known: look."},
    {"bank.shade",
     "In full sun the panels run at {value} of their short-circuit current; above {limit} a shaded "
     "cell and its bypass diode stay hot for hours. More ohms are kinder."},
    {"bank.drop", "Wire and joints take {value} of the volts and watts; {limit} is usual."},
    {"bank.no_runs", "No run of wire is described."},

    {"margin.unstated", "If what nobody stated is as bad as it may be: {then}"},

    {"device.rating", "{volts}, {amperes}"},
    {"device.made_for_ac",
     "Made for alternating current only: on {value} direct current its contacts hold an arc or "
     "weld shut. It must not break this circuit."},
    {"device.breaks_volts",
     "It has to break {value} of direct current and is rated for at most {limit} with the poles "
     "used."},
    {"device.breaks_amperes",
     "At the cold voltage of {volts} it has to break {value} ({factor} times short-circuit "
     "current); its printed pair allows {limit}."},
    {"device.no_pair",
     "No printed pair of volts and amperes is for the poles used; it has to break {value}."},
    {"device.fuse_volts",
     "The fuse must clear {value} of direct current and is rated for {limit}."},
    {"device.fuse_amperes",
     "A fuse below {value} ({factor} times the string's short-circuit current) would blow in "
     "bright sun; this one is {limit}. It does not clear a short of the panels."},
    {"device.fuse_is_no_switch",
     "A fuse or its holder is no switch: pulled at {value} of direct current it holds an arc. It "
     "must not break this circuit."},
    {"device.fuse_behind_the_joint",
     "It sits where the strings are joined already and parts none from the others: each string "
     "needs its own."},
    {"device.fuse_breaks_one_way",
     "It breaks in one direction only, and a faulty string is fed the other way: it protects no "
     "string."},
    {"device.no_fuse", "It is no fuse and does not trip by current: it protects no string."},
    {"device.fuse_wire",
     "The string fuse is {value}; the wire of \"{run}\" may be fused with {limit} at most."},
    {"device.fuse_wire_alone",
     "The string fuse is {value}; which wire it has to protect is not known."},
    {"device.fuse_rating_unknown", "What the string fuse is rated for is not known."},
    {"device.fuse_without_rating",
     "The fuse has no direct-current rating; the string stands at {value}."},
    {"device.carries",
     "It has to carry {value} ({factor} times short-circuit current); its contacts or shunt are "
     "rated {limit}. Opened under load it may arc."},
    {"device.carries_alone",
     "It has to carry {value}; what its contacts or shunt carry is not known."},
    {"device.polarised",
     "It breaks in one direction only: wire plus and minus, line and load as marked, or it burns "
     "when opened."},
    {"device.polarised_in_string",
     "It breaks in one direction only, and the other strings can feed a faulty one backwards "
     "through it: opened then, it burns. Use one that breaks either way, or fuses."},
    {"device.melts_either_way", "A fuse melts whichever way the current flows."},
    {"device.polarity_assumed_in_string",
     "Whether it breaks in both directions is not told, and the other strings can feed a faulty "
     "one backwards through it: read the label, and use one that breaks either way, or fuses."},
    {"device.polarity_assumed",
     "Whether it breaks in both directions is not told: it is taken to break in one only. Wire it "
     "as marked, or read the label."},
    {"device.either_way", "It breaks either way round."},
    {"device.body", "Around it is {value}; its own body may reach {limit}."},
    {"device.body_unknown", "How warm its own body gets is not known."},
    {"device.senses_in_run",
     "It only senses, yet it sits in the run \"{run}\": let it drive a contactor that is rated for "
     "this direct current."},
    {"device.disconnect", "\"{name}\" opens all conductors together by hand."},
    {"device.no_disconnect",
     "No device that breaks direct current by hand is listed: pulling a plug under load draws an "
     "arc."},
    {"device.bad_disconnect", "Nothing that is listed is a disconnect, nor is \"{name}\": {why}"},
    {"device.limit",
     "\"{name}\" does not reset by itself and opens the circuit by \"{breaker}\". Test that it "
     "does."},
    {"device.common_cause",
     "The thermostat opens by the same contacts: if they weld, neither stops the heat."},
    {"device.no_limit",
     "No independent over-temperature limit that stays open is listed: a welded thermostat would "
     "go unnoticed."},
    {"device.limit_opens_nothing",
     "The over-temperature limit \"{name}\" is not known to open this circuit: {why}"},

    {"caution.volts",
     "Direct current above {dry} ({wet} where wet) can kill, and its arcs do not go out by "
     "themselves."},
    {"caution.switches",
     "Switches and thermostats rated for alternating current weld shut on direct current."},
    {"caution.cold", "Nothing may see more volts than its rating on the coldest morning."},
    {"caution.bonding",
     "Bond the metal vessel, the sheath and the panel frames, and check for earth faults: a broken "
     "coil can arc through its sheath."},
    {"caution.combustibles", "Keep combustibles away; no cardboard or wood near the store."},
    {"caution.limit", "Use an independent over-temperature limit that does not reset by itself."},
    {"caution.steam", "Damp sand makes steam: dry it slowly and vented, never sealed."},
    {"caution.dust", "Silica dust harms lungs; hot metal and hot sand burn."},
    {"caution.vessel",
     "A closed vessel bursts when its liquid boils: it needs a vent, or a relief valve that can "
     "pass the steam."},
    {"caution.covered", "Liquid must cover the element whenever there is light on the panels."},
    {"caution.scalding", "Hot liquid and steam scald; hot metal burns."},
    {"caution.first_fire", "No unattended first fires; fit a smoke alarm."},
    {"caution.immersion", "An immersion element must never see its rated voltage in dry sand."},
    {"caution.codes",
     "Local codes and licensed practice decide. These are estimates; they approve nothing."},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id, "value", "limit", "low", "high">(std::move(given)...);
}

}  // namespace heatmatch::margins_sentences
