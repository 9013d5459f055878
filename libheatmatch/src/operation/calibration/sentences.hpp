#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// The sentences of this room, listed in answer/sentence_tables.cpp.
namespace heatmatch::calibration_sentences {

inline constexpr auto table = std::to_array<Template>({
    // Results of a log.
    {"calibration.one_circuit",
     "log a heating of one circuit alone, and assess that circuit alone"},
    {"calibration.found",
     "The fill conducts {fill} ({fill_low} to {fill_high}) {unit} at {at}; the catalog has "
     "{before}. The heat loss of the store is {loss} ({loss_low} to {loss_high}) times the "
     "described one."},
    {"calibration.residual",
     "The remaining difference between {readings} readings and model is {left} "
     "({before} before)."},
    {"calibration.entangled",
     "This log can hardly separate the two: add a probe at another depth, or hours of "
     "cooling."},
    {"calibration.damp",
     "Dry grains conduct {low} to {high}: the fill is damp, or a probe is not where it"
     " was stated."},
    {"calibration.too_little",
     "No fill conducts this little: check the probe positions and the power."},
    {"calibration.not_settled", "The fit did not converge: use its numbers with care."},
    {"calibration.left_out", "\"{probe}\" is left out: {why}"},
    {"calibration.left_out_from", "\"{probe}\" is left out from row {row} on: {why}"},
    {"calibration.equal_elements", "one log does not have the power of each unlike element"},
    {"calibration.others_move", "it stays constant while the others change"},
    {"calibration.is_heated", "it stays constant while the store absorbs heat"},
    {"calibration.frozen", "it stays constant from there on"},
    {"calibration.open_probe",
     "{readings} readings of \"{probe}\" are left out. Below {low} or above {high}, a "
     "thermocouple is open or its meter out of range."},

    {"calibration.no_sheath",
     "No thermocouple was on the sheath, so both numbers are less certain. Readings of"
     " bed and wall depend on where the probes are around the legs. A first heating with "
     "one on the sheath gives more."},

    // First heating.
    {"first_fire.what",
     "Log a first heating with a thermocouple on the sheath. It gives the conductivity of"
     " the fill and the heat loss of the store."},
    {"first_fire.danger",
     "This circuit has a danger: correct what its checks name before any heating."},
    {"first_fire.place",
     "What to measure. Sheath: at half the heated length of the innermost leg, with a sheathed "
     "thermocouple rated {reach}. It must touch no live part. Wall: at several spots around it. "
     "Bed: at a measured distance from the axis and from the floor. Fit all of it before the "
     "circuit is wired: terminals are live in daylight."},
    {"first_fire.log",
     "What to log, every quarter of an hour: hours, power_w, air_c, sheath_c, wall_c, "
     "and bed_c with its place in meters. power_w is volts times amperes at the bank, "
     "the mean since the row before. air_c is around the store; wall_c is the mean of "
     "its spots."},
    {"first_fire.long",
     "Begin with the whole store at air temperature. For the conductivity, log at "
     "least {heating} of heating. For the heat loss, log {cooling} of cooling after "
     "it."},
    {"first_fire.stop_sheath",
     "Stop at the latest when the sheath reads {stop}. At {limit} the first limit is "
     "reached, of sheath, coil, fill or a spot of settled sand. The difference is "
     "thermocouple error."},
    {"first_fire.stop_unknown",
     "The sheath temperature at which to stop is not assessed: the limit of sheath or "
     "fill is not known. State it before any fire."},
    {"first_fire.stop_without_coil",
     "The sheath temperature at which to stop is not assessed. The limit of the coil "
     "inside is not known and may be below that of the sheath. State the alloy before "
     "any fire."},
    {"first_fire.judged",
     "On a bright day the sheath is judged at {judged}; whether that is too hot is not assessed."},
    {"first_fire.expect",
     "On a bright day the sheath is judged at {judged}. Most of its rise is in the "
     "first hour, so watch from the first minute."},
    {"first_fire.too_hot",
     "Change the pairing first. On a bright day the sheath is judged at {judged}, "
     "above the stop temperature or above what is known."},
    {"first_fire.stop_wall", "Stop when wall or lid reads {limit}, the limit of wood near them."},
    {"first_fire.stop_odd",
     "Stop when a thermocouple reads open, jumps, or does not change while power flows. Stop when "
     "anything smells, smokes, hisses or steams. Stop when a fuse or a limit has opened. Stop "
     "before leaving it unattended."},
    {"first_fire.stop_how",
     "To stop, open the disconnect rated for the array's DC, or cover the panels "
     "completely. Never pull a plug or a wire under load. Wall and lid grow hotter for"
     " hours after that."},
    {"first_fire.decide",
     "Local codes and licensed practice decide. These are estimates; they approve nothing."},

    // Remedies for an insufficient log.
    {"calibration.describe_store", "describe store and element"},
    {"calibration.water", "water mixes by convection: it has no conductivity to fit"},
    {"calibration.log_heated", "log a day on which the store is heated"},
    {"calibration.log_both", "log some hours of heating and of cooling"},
    {"calibration.probe_in_bed", "add a probe in the bed, and hours of heating and of cooling"},
    {"calibration.same_store", "apply it to that one"},

    // Remedies for an unreadable log.
    {"calibration.say_place", "state where it is"},
    {"calibration.measure_place",
     "measure its distance from the axis and its height above the floor"},
    {"calibration.each_row", "give one for each row"},
    {"calibration.name_probes", "name every probe and give its readings"},
    {"calibration.log_hours", "log some hours"},
    {"calibration.sort_rows", "sort the rows by time and remove duplicates"},
    {"calibration.power", "give volts times amperes at the bank; kW or mW by mistake?"},
    {"calibration.air", "give the air around the store in °C, not in °F or K"},
    {"calibration.unit_in_name", "the unit is in the column's name"},
    {"calibration.radius_and_height", "give radius and height in meters, separated by a comma"},
    {"calibration.name_columns", "name the columns in the first line"},
    {"calibration.drop_one", "drop one of the two"},
    {"calibration.add_column", "add it, or rename its column"},
    {"calibration.fill_line", "fill or drop the line"},
});

template <Word Id, Word... Called>
requires Listed<table, Id>
[[nodiscard]] Sentence say(NamedArgument<Called>... given) {
    return make_sentence<table, Id>(std::move(given)...);
}

}  // namespace heatmatch::calibration_sentences
