#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// The sentences of this room, listed in answer/sentence_tables.cpp.
namespace heatmatch::meter_sentences {

inline constexpr auto table = std::to_array<Template>({
    {"meter.span", "{low} to {high}, typically {typical}"},
    {"meter.not_known", "not known"},

    {"meter.ohms_each", "resistance of one element, cold"},
    {"meter.ohms_of", "resistance of {element}, cold"},
    {"meter.ohms_each.how",
     "Disconnect it and connect an ohmmeter across its two ends. Subtract the reading of the leads "
     "touched together. Below {small} use a four-wire measurement."},
    {"meter.ohms_each.expect", "{span} at {at} ({basis})."},
    {"meter.ohms_each.low", "Turns are shorted, or it is another element."},
    {"meter.ohms_each.high", "A bad joint; an open reading means a broken coil."},

    {"meter.ohms_bank", "resistance of the bank, cold"},
    {"meter.ohms_bank.how", "Array disconnected, ohmmeter across the two wires to the bank."},
    {"meter.ohms_bank.expect", "{span}: {hookup} of the above."},
    {"meter.ohms_bank.open", "With one branch open, about {open}."},
    {"meter.ohms_bank.element_open", "With {element} open, about {open}."},
    {"meter.ohms_bank.low", "Turns are shorted, or the bank is wired differently."},
    {"meter.ohms_bank.high", "An element is open, a joint is bad, or it is wired differently."},

    {"meter.insulation", "insulation resistance of the sheath"},
    {"meter.insulation.how",
     "Element disconnected at both ends, insulation tester at {volts} DC from terminals to sheath "
     "for one minute. Never test through controls or panels."},
    {"meter.insulation.expect",
     "Above {fresh} new, above {used} in service; it rises as the element dries."},
    {"meter.insulation.low",
     "Damp magnesia: have it dried and its insulation tested by a qualified person before it is "
     "energized. If it stays low, replace the element."},

    {"meter.open_volts", "open-circuit voltage of the array"},
    {"meter.open_volts.how",
     "Disconnect open, voltage across the array's two wires; temperature at the back "
     "of a panel plus {colder}."},
    {"meter.open_volts.expect",
     "{volts} in full sun with cells at {cells}: {series} x {each}{factor}. The table lists lower "
     "irradiances."},
    {"meter.open_volts.falls", " x ({whole} - {beta} x ({cells_c} - {label_c}))"},
    {"meter.open_volts.rises", " x ({whole} + {beta} x ({cells_c} - {label_c}))"},
    {"meter.open_volts.unlike",
     "{volts} in full sun with cells at {cells}. Measure each string by itself: {strings}, in the "
     "order of the array."},
    {"meter.open_volts.section", "One bypassed section lowers a string by {section}, to {left}."},
    {"meter.open_volts.strings", "Measure each string by itself."},
    {"meter.open_volts.low", "A bypassed section or panel: measure panel by panel."},
    {"meter.open_volts.high", "Cells colder than measured, or another hook-up."},
    {"meter.open_volts.not_known",
     "bypass_diodes of panel \"{panel}\": count them in its box to know the voltage of"
     " a bypassed section"},

    {"meter.short_amperes", "short-circuit current of the array"},
    {"meter.short_amperes.how",
     "DC clamp meter, briefly, through a switch rated to short the array."},
    {"meter.short_amperes.expect", "{span} in {sun}; proportional to the sun."},
    {"meter.short_amperes.low", "Shade, dirt, aging, or a string that is not connected."},
    {"meter.short_amperes.high",
     "More sun than the meter reads: snow, cloud edge or a tilted meter."},

    {"meter.ratio", "voltage over current at the bank"},
    {"meter.ratio.how", "Voltage across the bank and DC clamp meter on its wire, both at once."},
    {"meter.ratio.expect", "{span} in any weather: {cold} cold, {hot} with the coil at {coil}."},
    {"meter.ratio.high", "An element is open, or a joint between the meter probes is bad."},

    {"meter.drop", "voltage at the array minus voltage at the bank, over current"},
    {"meter.drop.how",
     "Voltage across the array's wires, then across the bank, at the same current."},
    {"meter.drop.expect", "{ohms} of wire and joints, {cold} of it cold."},
    {"meter.drop.volts", "At {current} that is {volts}."},
    {"meter.drop.low", "A shorter run than described."},
    {"meter.drop.high",
     "A hot joint or thin wire: scan the joints with an infrared thermometer; tape shiny metal "
     "first."},
    {"meter.drop.wire", "wire of run \"{run}\": name the existing wire"},
    {"meter.drop.joint",
     "joint_ohm of run \"{run}\": measure the voltage across its joints and divide by "
     "the current; assumed {nothing} until then"},
    {"meter.drop.runs", "runs: describe the wire between array and bank"},

    {"meter.now", "current of the bank now"},
    {"meter.now.how", "DC clamp meter, with the sun on the plane of the panels."},
    {"meter.now.expect",
     "{span} in {sun} with cells at {cells}; the table lists lower irradiances. Never more than "
     "the short-circuit current."},
    {"meter.now.low", "Less sun than assumed, dirt, aging, or higher resistance than described."},
    {"meter.now.high", "More sun than assumed, or lower resistance."},

    {"meter.earth", "voltage of + and - to earth"},
    {"meter.earth.how",
     "Array disconnected from everything, a meter of about {meter} from + to earth, "
     "then from - to earth."},
    {"meter.earth.expect",
     "Drifting and small, not a steady share of the open-circuit voltage. Steady "
     "readings V+ and V- mean a leak |V-| / (|V+| + |V-|) of the way up from the "
     "negative end. With a meter of Rm, the leak is Rm (Voc / (|V+| + |V-|) - {whole})"
     " ohms."},
    {"meter.earth.high",
     "Find and repair the leak before the next one: a second fault can burn or kill."},

    {"meter.joints", "temperature rise of each joint"},
    {"meter.joints.how",
     "After an hour at noon, thermocouple or infrared thermometer; tape or black paint on shiny "
     "metal first."},
    {"meter.joints.expect", "Less than {rise} above the air in its box."},
    {"meter.joints.high", "Remake the joint, cold and disconnected."},

    {"meter.limit", "trip of the independent limit"},
    {"meter.limit.how",
     "Warm only its sensor, in oil or with a hot-air gun, beside a thermometer. Watch the voltage "
     "at the bank."},
    {"meter.limit.trips",
     "Trips within {within} of its set point. The voltage at the bank drops to {nothing} and stays "
     "there until it is reset."},
    {"meter.limit.expect", "{set}. {trips}"},
    {"meter.limit.none", "not known: no limit that stays open is described. {trips}"},
    {"meter.limit.no_set_point", "not known. {trips}"},
    {"meter.limit.low", "Replace it."},
    {"meter.limit.high", "Replace it before the store is heated again."},
    {"meter.limit.add", "devices: add the independent limit (senses only, not reset by itself)"},
    {"meter.limit.read_set_point",
     "set_c of device \"{device}\": read the set point from its body"},

    {"meter.element_volts", "voltage across {element}"},
    {"meter.element_volts.how",
     "Voltmeter across its two terminals, with the circuit closed. DC range, insulated probes."},
    {"meter.element_volts.low",
     "Turns are shorted, another element is open, or the bank is wired differently."},
    {"meter.element_volts.high", "It is open, or the bank is wired differently."},
    {"meter.store", "temperatures of the store"},
    {"meter.store_of", "temperatures of the store, sheath of {element}"},
    {"meter.store.how",
     "Thermocouples at the sheath, in the bulk and at the wall; at sunset and at dawn."},
    {"meter.store.expect",
     "Sheath {span}, bulk about {bulk}. That is at the end of the third of three "
     "bright days of {power} for {hours}."},
    {"meter.store.with_others",
     "{how} The other circuits are in full sun, or on other planes on a clear day."},
    {"meter.store.misfit", "not known: {misfit}"},
    {"meter.store.low", "Less heat than assumed, damp fill, or more loss through the wall."},
    {"meter.store.high", "Settled or drier fill: fit its conductivity to the readings."},
    {"meter.store.how_in_liquid",
     "Thermocouples at the sheath, in the liquid and at the wall; at sunset and at dawn."},
    {"meter.store.low_in_liquid", "Less heat than assumed, or more loss through the wall."},
    {"meter.store.high_in_liquid",
     "Scale on the sheath, layers of warm and cold liquid, or less of it than assumed."},
    {"meter.store.describe", "store: describe it, with its medium and sizes"},
    {"meter.store.needed", "{field}: needed for the temperatures of the store"},

    {"meter.no_sun", "Without a sun meter:"},
    {"meter.no_sun.ratio",
     "Read volts and amperes at the bank at the same moment and divide: {low} to {high} in any "
     "sun."},
    {"meter.no_sun.outside",
     "Another result is a fault of the bank, of its joints or of this description. This result "
     "alone says nothing about the panels."},
    {"meter.no_sun.array",
     "The array is its own sun meter: its short-circuit current is {span} in {sun}. Each ampere "
     "means {each}. Short it only through a switch rated for that: this is live work."},
    {"meter.no_sun.panel",
     "One clean panel of \"{group}\" in the same plane is enough: {amperes} in {sun}."},
    {"meter.no_sun.row",
     "Then use the row of the table with that Isc. Make both readings within a minute, in steady "
     "sun."},

    {"meter.name_panel", "panel: name the panel of the circuit"},
    {"meter.name_element", "element: name the element of the circuit"},
    {"meter.changing_ohms",
     "Element \"{element}\" changes resistance with its own temperature: the sheet is "
     "valid for one coil temperature only."},
    {"meter.bands",
     "The bands cover the panels' current and the resistance. Meter error is "
     "additional: about {meter} for voltage and current, {sun_meter} for a sun meter "
     "(common practice, no source)."},
    {"meter.back_of_panel",
     "The back of a panel is about {colder} colder than its cells: add {colder} to the"
     " temperature measured there."},
    {"meter.sun_by_current",
     "Isc as sun meter hides uniform dirt and uniform aging, because the reference "
     "shrinks with them. Clean one panel and use its Isc only."},
    {"meter.no_load_break",
     "Never pull a plug or open an AC switch under load; use the DC disconnect. Short "
     "the array only through a switch rated for it, and only during the reading."},
    {"meter.correct_option", "correct the option or omit it"},

    {"readings.value", "{count} value of {field} {what}"},
    {"readings.values", "{count} values of {field} {what}"},
    {"readings.failed", "left out: the reading failed"},
    {"readings.open_thermocouple", "left out: an open thermocouple"},
    {"readings.stuck", "left out: stuck while the power changed"},
    {"readings.a_little_negative", "a little below {nothing} counted as {nothing}"},
    {"readings.too_much", "left out: at most {most} is plausible"},
    {"readings.not_between", "left out: below {low} or above {high}"},
    {"readings.beyond_air", "left out: above {high} or below {low}"},
    {"readings.dim",
     "{field} is never above {most}: if that is percent of full sun, multiply by {ten}; it is read "
     "as {unit}"},

    {"readings.remove_row", "remove the row, or leave its time out"},
    {"readings.milliseconds", "these look like milliseconds: divide by {thousand}"},
    {"readings.sort_rows", "sort the rows by time and remove duplicates"},
    {"readings.smaller_unit",
     "this looks like {unit}: divide by {thousand}, or write the unit into the cells"},
    {"readings.change_signs", "the leads or the clamp are reversed: change the signs"},
    {"readings.larger_unit", "this looks like {unit}: multiply by {thousand}"},
    {"readings.percent_of_sun",
     "the current implies more sun; this looks like percent of {full}: multiply by "
     "{ten}"},
    {"readings.fahrenheit_of",
     "this looks like °F ({meant}): convert it, or write °F into the cells"},
    {"readings.fahrenheit", "this looks like °F: convert it, or write °F into the cells"},

    {"readings.given_twice", "remove one of the two"},
    {"readings.begin_with", "begin with {columns},..."},
    {"readings.decimal_point", "write a point, not a comma, for decimals"},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id>(std::move(given)...);
}

}  // namespace heatmatch::meter_sentences
