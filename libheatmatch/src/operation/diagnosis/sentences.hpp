#pragma once

#include <array>
#include <cstddef>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// The sentences of this room, listed in answer/sentence_tables.cpp.
namespace heatmatch::diagnosis_sentences {

inline constexpr auto table = std::to_array<Template>({
    {"diagnosis.array_v", "voltage at the array"},
    {"diagnosis.bank_v", "voltage at the bank"},
    {"diagnosis.bank_a", "bank current"},
    {"diagnosis.open_v", "open-circuit voltage"},
    {"diagnosis.short_a", "short-circuit current"},
    {"diagnosis.element_ohm", "resistance of an element"},
    {"diagnosis.bank_ohm", "resistance of the bank"},
    {"diagnosis.irradiance", "sun"},
    {"diagnosis.panel_temperature", "back of the panel"},

    {"diagnosis.ratio",
     "voltage over current at the bank, the same in any sun: read {read}, predicted "
     "{predicted}"},
    {"diagnosis.read",
     "{reading}: read {read}, predicted {predicted}, off by {off} times the meter "
     "error"},
    {"diagnosis.read_in_mean",
     "{reading}, mean of {rows} rows: read {read}, predicted {predicted}, off by {off}"
     " times the meter error"},
    {"diagnosis.wild_one",
     "{count} reading is more than {errors} times the meter error off the best explanation. It has "
     "little weight: {reading}, read {read}."},
    {"diagnosis.wild",
     "{count} readings are more than {errors} times the meter error off the best explanation. They "
     "have little weight: {reading}, read {read} and others."},

    {"diagnosis.as_expected",
     "The readings agree with the described circuit, with a bank of {bank}. They show no fault, "
     "which promises nothing."},
    {"diagnosis.as_described",
     "The circuit as described, with a bank of {bank}, would read the same."},
    {"diagnosis.ratio_fits",
     "V/I fits the elements. The panels cannot be judged without a sun reading."},
    {"diagnosis.ohms_fit",
     "The resistance fits the elements. The panels cannot be judged without volts, amperes and "
     "sun."},
    {"diagnosis.panels_fit",
     "The readings fit the panels. The elements cannot be judged without volts and amperes at the "
     "bank."},
    {"diagnosis.none_judged",
     "Neither elements nor panels can be judged: measure volts, amperes and sun together."},
    {"diagnosis.element_open",
     "An element is open: no current in {where}. Disconnect it and measure the "
     "resistance of each element and of its leads."},
    {"diagnosis.turns_shorted",
     "Turns of an element are shorted, about {share} of one; the bank has {bank}. "
     "Measure each element's cold resistance, and its insulation to the sheath."},
    {"diagnosis.section_bypassed",
     "A panel has lost voltage: {lost}. Measure the open-circuit voltage of each panel in the same "
     "sun. Inspect its junction box for a burnt diode or ribbon."},
    {"diagnosis.panel_missing",
     "Bypassed or left out of the string: {lost}. Measure the open-circuit voltage of each panel "
     "in "
     "the same sun, and trace the wires between them."},
    {"diagnosis.string_missing",
     "Not connected: {lost}. Measure each string's open-circuit voltage and current, and look for "
     "a "
     "loose connector or an open fuse."},
    {"diagnosis.hot_joint",
     "A joint or wire has about {ohms} of excess resistance, {where}. Open the disconnect if "
     "anything smells or is too hot to touch. Otherwise scan the joints with an infrared "
     "thermometer while it heats, and remake the hot one."},
    {"diagnosis.low_sun",
     "About {share} of the measured sun falls on the cells: shade, haze, or a meter in another "
     "plane. Look along the panels for shade, and hold the meter in their plane."},
    {"diagnosis.low_sun_unread",
     "Shade or haze on the panels would read alike. No sun was measured, so how much is not known. "
     "Look along the panels for shade, and measure the sun in their plane."},
    {"diagnosis.dirt",
     "The cells produce about {share} of the current: dirt or snow on all panels. "
     "Clean one and compare its Isc with another's."},
    {"diagnosis.dirt_unread",
     "Dirt or snow on all panels would read alike. No sun was measured, so how much is not known. "
     "Clean one panel and compare its Isc with another's."},
    {"diagnosis.aged",
     "The panels have aged: about {share} of the assumed current, and {ohms} more in "
     "each panel. Measure Voc, Isc, sun and temperature of one and enter them. A bank "
     "of higher resistance may now be better."},
    {"diagnosis.panels_hooked_otherwise",
     "The panels are wired {found}, not {described}. Trace the wires, then correct "
     "them or the description."},
    {"diagnosis.bank_hooked_otherwise",
     "The elements are wired {found}, not {described}. Trace the wires, then correct "
     "them or the description."},
    {"diagnosis.another_element",
     "Each element has about {ohms} cold, not the described {described}: it is another"
     " element. {next}"},
    {"diagnosis.another_number",
     "The bank reads as {found}, not {described}: another number of elements. Count "
     "those that are wired and measure the resistance of each. Then correct them or "
     "the description."},
    {"diagnosis.read_nameplate",
     "Read its nameplate, measure its resistance cold and disconnected, and correct "
     "the description."},
    {"diagnosis.named_one", "In the catalog {names} fits. {next}"},
    {"diagnosis.named", "In the catalog {names} fit. {next}"},
    {"diagnosis.named_and_more", "In the catalog {names} and {more} more fit. {next}"},
    {"diagnosis.none_named", "No element of the catalog has this resistance. {next}"},
    {"diagnosis.fill",
     "The fill conducts about {k} at {cold}, not the value of its medium. Higher means damp; lower "
     "means settled or coarse. Look for steam and for a gap at the sheath, then enter the value."},

    {"diagnosis.whole_bank", "the whole bank or its wire"},
    {"diagnosis.branches", "{open} of {all} branches"},
    {"diagnosis.section", "{lost} section of {all} in one string"},
    {"diagnosis.sections", "{lost} sections of {all} in one string"},
    {"diagnosis.panel", "{lost} panel of the {all} of one string"},
    {"diagnosis.panels", "{lost} panels of the {all} of one string"},
    {"diagnosis.string", "{lost} string of the {all}"},
    {"diagnosis.strings", "{lost} strings of the {all}"},
    {"diagnosis.joint_at_bank", "between array and bank"},
    {"diagnosis.joint_in_array", "in the array, before its terminals"},
    {"diagnosis.ohms_of_element", "cold resistance of each element"},
    {"diagnosis.elements", "elements in {found}"},
    {"diagnosis.bank_ohms",
     "V/I at the bank: read {read}, described {described} ({low} to {high}), ratio {times}."},
    {"diagnosis.bank_ohms_open",
     "V/I at the bank: voltage without current, so it reads as open; described "
     "{described} ({low} to {high})."},
    {"diagnosis.one_reading",
     "One row of readings cannot decide: about {often} of rows are misread, so it "
     "rules out no explanation. Repeat the readings before you disassemble anything."},
    {"diagnosis.share_of_turns", "share of the turns"},
    {"diagnosis.extra_ohms", "excess resistance"},
    {"diagnosis.sun_on_cells", "sun on the cells over that of the meter"},
    {"diagnosis.current_left", "current over the assumed current"},
    {"diagnosis.ohms_of_panel", "excess resistance of each panel"},
    {"diagnosis.k_of_fill", "conductivity of the fill at {cold}"},

    {"diagnosis.sections_assumed",
     "panel \"{panel}\": bypass_diodes is not known, three sections are assumed (common practice, "
     "no source)"},
    {"diagnosis.equal_elements", "compare its readings with the meter sheet"},
    {"diagnosis.changing_ohms",
     "element \"{element}\" changes resistance with temperature, so its voltage over current is a "
     "weak test"},
    {"diagnosis.rows",
     "{used} of {all} rows are compared with the circuit, spread over the current; "
     "others only show stuck sensors and units"},
    {"diagnosis.sun_by_current",
     "No sun meter: short-circuit current is used instead. It hides uniform dirt and "
     "uniform aging of all panels."},
    {"diagnosis.sun_fitted",
     "Neither sun nor short-circuit current was measured. The sun of every row is "
     "fitted, so only faults that do not depend on it can be found."},
    {"diagnosis.temperatures_left", "{all} temperatures of sheath or store are not used: {why}"},
    {"diagnosis.liquid_store", "a liquid store mixes by convection"},
    {"diagnosis.shared_store", "other circuits heat the same store"},
    {"diagnosis.no_store", "the store is not described"},
    {"diagnosis.no_power",
     "no row has both such a temperature and a power, one to ten hours after heating began"},
    {"diagnosis.temperatures",
     "{used} of {all} temperatures of sheath and store are used: one to ten hours "
     "after heating begins, across the log"},
    {"diagnosis.fill_asked",
     "{used} temperatures of sheath and store fit {fitted}; {medium} has {listed}"},

    {"diagnosis.unexplained",
     "No fault in the list explains the readings; the nearest is \"{fault}\". Check meters, units "
     "and the description, and consider two faults at once."},
    {"diagnosis.indistinguishable", "These readings do not distinguish: {faults}."},
    {"diagnosis.readings_fit", "These readings fit the described circuit."},
    {"diagnosis.cannot_tell_fine", "{judged} These faults would read alike: {faults}."},
    {"diagnosis.or", "{some} or {last}"},
    {"diagnosis.measure_next", "Measure next: {reading}."},

    {"diagnosis.error_of_meter", "give the error of your meter, one standard deviation"},
    {"diagnosis.give_candidate",
     "assess or rank an installation, and diagnose the resulting candidate"},
    {"diagnosis.measure_bank",
     "measure voltage and current at the bank at one time, and enter them"},

    {"next.open_v.how", "Disconnect open, voltage across the array's wires."},
    {"next.short_a.how",
     "DC clamp meter, briefly, through a switch that is rated to short the array."},
    {"next.array_v.how", "Voltage across the array's wires while it heats."},
    {"next.bank_v.how", "Voltage across the bank while it heats."},
    {"next.bank_a.how", "DC clamp meter on a wire of the bank while it heats."},
    {"next.bank_ohm.how", "Ohmmeter across the bank, cold, array disconnected."},
    {"next.irradiance.how", "Sun meter in the plane of the panels."},
    {"next.element_ohm.how",
     "Ohmmeter across each element, cold and disconnected; look for the odd one."},

    {"next.count", "number of elements wired"},
    {"next.count.how", "Count them, array disconnected, and read each nameplate."},
    {"next.joints", "joint temperature"},
    {"next.joints.how",
     "Infrared thermometer on every joint while it heats; tape shiny metal first."},
    {"next.cleaned", "Isc of a cleaned panel"},
    {"next.cleaned.how", "Clean one panel; its Isc over that of another."},
    {"next.each_panel", "{field} of each panel"},
    {"next.each_panel.how",
     "Voltage at each panel's own leads, in the same sun; look for the odd one."},
    {"next.dim", "{volts} and {amperes} in a third of the sun"},
    {"next.bright", "{volts} and {amperes} in bright sun"},
    {"next.other_sun.how", "The same meters at another time of day."},
    {"next.fill", "{sheath} and {store}"},
    {"next.fill.how",
     "The same thermocouples with volts and amperes, after hours of steady heating."},
    {"next.fill.tells", "A fill with another conductivity deviates more the longer it heats."},

    {"next.predictions", "{each:; }."},
    {"next.told", "{fault}: {value}"},
    {"next.told_open", "{fault}: open circuit"},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id>(std::move(given)...);
}

/// A count of any size.
template <Word Called>
[[nodiscard]] NamedArgument<Called> count_of(std::size_t count) {
    constexpr int all_digits = 12;
    return with<Called>(static_cast<double>(count), unit::count, all_digits);
}

}  // namespace heatmatch::diagnosis_sentences
