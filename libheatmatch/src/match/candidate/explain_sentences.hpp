#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// The sentences of the steps of an explanation, listed in answer/sentence_tables.cpp.
namespace heatmatch::explain_sentences {

inline constexpr auto table = std::to_array<Template>({
    {"explain.source", "{source} ({kind})"},
    {"explain.given", "{name}: {formula} = {value} {unit}"},
    {"explain.computed", "{name}: {formula} = {numbers} = {value} {unit}"},
    {"explain.sourced", "{step} [{source}]"},
    {"explain.ratio", "{above} / {below}"},

    {"explain.panel_v_oc", "panel, open-circuit voltage"},
    {"explain.panel_i_sc", "panel, short-circuit current"},
    {"explain.panel_v_mp", "panel, voltage at maximum power"},
    {"explain.panel_i_mp", "panel, current at maximum power"},
    {"explain.panel_alpha", "panel, temperature coefficient of current"},
    {"explain.panel_beta", "panel, temperature coefficient of voltage"},
    {"explain.panel_gamma", "panel, temperature coefficient of power"},
    {"explain.diode_current", "single diode, light current"},
    {"explain.diode_saturation", "single diode, ln of saturation current"},
    {"explain.diode_series", "single diode, series resistance"},
    {"explain.diode_shunt", "single diode, shunt conductance"},
    {"explain.diode_ideality", "single diode, modified ideality"},
    {"explain.diode_fit", "label matched by a single diode, mode {mode}"},
    {"explain.label_moved", "shift of v_mp from the label"},
    {"explain.label_moved_by", "v_mp of the model / v_mp of the label - {whole}"},
    {"explain.current_today", "panel today, current"},
    {"explain.light_behind", "panel, short-circuit current with rear irradiance"},
    {"explain.light_behind_by",
     "label with rear irradiance, else Isc x ({whole} + {share} bifaciality)"},
    {"explain.light_behind_numbers", "{current} x {factor}"},
    {"explain.voltage_today", "panel today, voltage"},
    {"explain.measured", "measured / modeled at the same sun and temperature"},
    {"explain.aged", "{whole} - {loss} a year x age"},
    {"explain.aged_numbers", "{whole} - {loss} x {age}"},
    {"explain.as_new", "assumed as new"},
    {"explain.cold_factor", "cold voltage factor"},
    {"explain.cold_by_table", "table of the code at the record low"},
    {"explain.cold_at", "at {low}"},
    {"explain.cold_by_label", "{whole} + beta (record low - {label} °C)"},
    {"explain.cold_numbers", "{whole} + {beta}/K x ({low} - {label}) K"},
    {"explain.group", "panels of group \"{group}\" in the array"},
    {"explain.group_by", "counted, of {panel}"},
    {"explain.string_volts", "open-circuit voltage at the record low, string {string}"},
    {"explain.string_volts_by", "sum over its panels"},
    {"explain.string_volts_term", "{panels} x {voltage}"},
    {"explain.array_match", "Vmp/Imp of the array, present condition"},
    {"explain.array_match_by", "point of the most power of all strings together"},
    {"explain.array_season_by", "sum over the season of the power of the solved array"},
    {"explain.cold_voltage", "cold voltage of the array"},
    {"explain.cold_voltage_by", "Voc x factor x panels in series"},
    {"explain.cold_voltage_numbers", "{voltage} x {factor} x {panels}"},

    {"explain.rated_v", "element, rated voltage"},
    {"explain.rated_w", "element, rated power"},
    {"explain.printed_ohm", "element, printed resistance"},
    {"explain.measured_ohm", "element, measured resistance"},
    {"explain.typical_ohm", "element resistance, typical"},
    {"explain.ohm_by_ohms", "R = ohms x factor of the alloy when hot"},
    {"explain.ohm_by_rating", "R = V² / P x alloy factor in use / at rated watts"},
    {"explain.ohm_by_rating_numbers", "({voltage})² / {power} x {factor}"},
    {"explain.low_ohm", "element resistance, low end"},
    {"explain.high_ohm", "element resistance, high end"},
    {"explain.ohm_at_end", "typical x tolerance and alloy at that end"},
    {"explain.ohm_at_end_numbers", "{typical} x {factor}"},
    {"explain.bank_ohm", "bank resistance"},
    {"explain.bank_ohm_by", "R x elements in series / branches"},
    {"explain.bank_ohm_numbers", "{each} x {series} / {branches}"},
    {"explain.run_ohm", "resistance of \"{run}\""},
    {"explain.run_ohm_by", "{ways} x length x ohms per meter at its temperature + joints"},
    {"explain.run_ohm_numbers", "{ways} x {length} x {each}"},
    {"explain.run_ohm_joints", "{ways} x {length} x {each} + {joints}"},
    {"explain.runs_ohm", "resistance of all runs"},
    {"explain.runs_ohm_by", "strings and branches share theirs"},
    {"explain.runs_ohm_numbers", "{runs: + }"},
    {"explain.run_share", "{ohms} x {share}"},

    {"explain.panel_sees", "load resistance of one panel"},
    {"explain.panel_sees_by", "(bank + runs) x strings / panels in series"},
    {"explain.panel_sees_numbers", "({bank} + {runs}) {unit} x {strings} / {series}"},
    {"explain.stc_match", "STC match of one panel"},
    {"explain.stc_match_by", "Vmp / Imp"},
    {"explain.current_at", "current at {sun}, {cells}"},
    {"explain.current_by", "where I = I(V) of the array meets V = I R"},
    {"explain.power_at", "power at {sun}, {cells}"},
    {"explain.power_by", "P = I² x bank"},
    {"explain.power_numbers", "({current})² x {bank}"},
    {"explain.mean_power", "mean power"},
    {"explain.mean_power_by", "mean over the conditions"},
    {"explain.mean_power_numbers", "({powers: + }) {unit} / {conditions}"},

    {"explain.season_heat", "heat of the season"},
    {"explain.season_heat_by",
     "panels x E(load resistance of one panel) x bank / (bank + runs), E summed over "
     "the season's weather"},
    {"explain.season_heat_numbers", "{panels} x E({each}) x {bank} / {total}, {days} days"},
    {"explain.season_mpp", "heat at the maximum power point"},
    {"explain.season_mpp_by", "panels x sum of hours x Pmp"},
    {"explain.season_harvest", "utilization of the season"},
    {"explain.season_harvest_by", "heat / heat at the maximum power point"},
    {"explain.season_best", "best bank resistance for the season"},
    {"explain.season_best_by", "where dE/d(ln R) = {none}"},

    {"explain.largest_power", "largest power of one element"},
    {"explain.largest_power_by",
     "largest of I² R at {sun} and record low + {rise}, resistance at its worst end"},
    {"explain.other_circuit", "power of circuit \"{circuit}\" in the same store"},
    {"explain.other_circuit_by", "elements x largest power of each at the same time"},
    {"explain.other_circuit_numbers", "{elements} x {power}"},
    {"explain.watts_per_length", "watts per centimeter"},
    {"explain.watts_per_length_by", "elements x power / total heated length"},
    {"explain.watts_per_length_numbers", "{elements} x {power} / {length}"},
    {"explain.sheath_low", "sheath, low conductivity"},
    {"explain.sheath_in_liquid", "the liquid + {rise}, or + {boiling} where it boils"},
    {"explain.sheath_in_bed",
     "Theta(Ts) = Theta(bed) + q'/({two} pi) sum over the legs of asinh(L/{two}d) - "
     "asinh(L/{two}rho)"},
    {"explain.sheath_numbers", "{charge} a day, {days} days, air {air}, {symbol} {conductivity}"},
    {"explain.sheath_judged", "sheath, judged"},
    {"explain.sheath_judged_by", "air + {factor} x (sheath - air)"},
    {"explain.sheath_judged_numbers", "{air} + {factor} x ({sheath} - {air}) {unit}"},
    {"explain.terminal", "terminal"},
    {"explain.terminal_by", "chain of fins from the heated end to the wire"},
    {"explain.terminal_numbers", "end of heat {end}, {distance} on"},

    {"explain.headroom", "headroom of {margin}, {subject}"},
    {"explain.headroom_by", "(limit - value) / (limit - at rest)"},
    {"explain.headroom_numbers", "value {value}, limit {limit} {unit}"},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id>(std::move(given)...);
}

}  // namespace heatmatch::explain_sentences
