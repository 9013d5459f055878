#pragma once

#include <array>
#include <utility>

#include "heatmatch/base/sentence.hpp"

/// What this room says; the answer lists it.
namespace heatmatch::calibration_sentences {

inline constexpr auto table = std::to_array<Template>({
    // What a log tells.
    {"calibration.found",
     "The fill conducts {fill} ({fill_low} to {fill_high}) {unit} at {at} ({before} in the "
     "catalog), "
     "the store loses {loss} ({loss_low} to {loss_high}) times what its description gives."},
    {"calibration.residual",
     "That leaves {left} between {readings} readings and model ({before} before)."},
    {"calibration.entangled",
     "The two can hardly be told apart by this log: add a probe at another depth, or hours of "
     "cooling."},
    {"calibration.damp",
     "Dry grains conduct {low} to {high}: the fill is damp, or a probe lies elsewhere than told."},
    {"calibration.too_little",
     "No fill conducts as little: check where the probes lie and what the power is."},
    {"calibration.not_settled", "The fit did not settle: take its numbers with care."},
    {"calibration.left_out", "\"{probe}\" is left out: {why}"},
    {"calibration.left_out_from", "\"{probe}\" is left out from row {row} on: {why}"},
    {"calibration.others_move", "it stands still while the others move"},
    {"calibration.is_heated", "it stands still while the store takes heat"},
    {"calibration.frozen", "it stands still from there on"},
    {"calibration.open_probe",
     "{readings} readings of \"{probe}\" are left out: below {low} or above {high} a thermocouple "
     "is open or its meter out of range."},

    {"calibration.no_sheath",
     "No thermocouple was on the sheath: readings of bed and wall depend on where around the legs "
     "the probes are, so both numbers are less certain. A first fire with one on the sheath shows "
     "more."},

    // A first fire.
    {"first_fire.what",
     "The log of a first fire with a thermocouple on the sheath shows how well the fill conducts "
     "and "
     "what the store loses."},
    {"first_fire.danger",
     "This circuit has checks that say danger: mend what they name before any fire."},
    {"first_fire.place",
     "What to read: the sheath of the innermost leg at half its heated length, with a sheathed "
     "thermocouple good for {reach} that touches no live part; the wall at several spots around "
     "it; and the bed, its distance from the axis and from the floor measured. All of it is "
     "fitted before the circuit is wired: terminals in daylight are live."},
    {"first_fire.log",
     "What to log, every quarter of an hour: hours, power_w (volts times amperes at the bank, mean "
     "since the "
     "row before), air_c (around the store), sheath_c, wall_c (mean of its spots), and bed_c with "
     "its place in metres."},
    {"first_fire.long",
     "Begin with the whole store as warm as the air. Log at least {heating} of heating, for the "
     "conductivity, and {cooling} of cooling after it, for the loss."},
    {"first_fire.stop_sheath",
     "Stop at the latest when the sheath reads {stop}: at {limit} the first limit of sheath, coil, "
     "fill or a spot of settled sand is reached; the rest is the error of the thermocouple."},
    {"first_fire.stop_unknown",
     "At which temperature of the sheath to stop is not assessed: the limit of sheath or fill is "
     "not known. State it before any fire."},
    {"first_fire.stop_without_coil",
     "At which temperature of the sheath to stop is not assessed: the limit of the coil inside is "
     "not known and may be below that of the sheath. State the alloy before any fire."},
    {"first_fire.judged",
     "On a bright day the sheath is judged at {judged}; whether that is too hot is not assessed."},
    {"first_fire.expect",
     "On a bright day the sheath is judged at {judged}; most of its rise comes in the first hour, "
     "so watch from the first minute."},
    {"first_fire.too_hot",
     "On a bright day the sheath is judged at {judged}, which is beyond where to stop or beyond "
     "what is known: change the pairing first."},
    {"first_fire.stop_wall", "Stop when wall or lid read {limit}, the limit of wood near them."},
    {"first_fire.stop_odd",
     "Stop when a thermocouple reads open, jumps, or does not change while power flows; when "
     "anything smells, smokes, hisses or steams; when a fuse or a limit has opened; when nobody is "
     "watching."},
    {"first_fire.stop_how",
     "To stop is to open the isolator rated for the array's direct current, or to cover the panels "
     "whole; never a plug or a wire under load. Wall and lid grow hotter for hours after it."},
    {"first_fire.decide",
     "Local codes and licensed practice decide. These are estimates; they approve nothing."},

    // Remedies for a log that cannot tell.
    {"calibration.describe_store", "describe store and element"},
    {"calibration.water", "water mixes itself: it has no conductivity to fit"},
    {"calibration.log_heated", "log a day on which the store is heated"},
    {"calibration.log_both", "log some hours of heating and of cooling"},
    {"calibration.probe_in_bed", "add a probe in the bed, and hours of heating and of cooling"},
    {"calibration.same_store", "apply it to that one"},

    // Remedies for a log that cannot be read.
    {"calibration.say_place", "say where it sits"},
    {"calibration.measure_place",
     "measure how far it is from the axis and how high above the floor"},
    {"calibration.each_row", "give one for each row"},
    {"calibration.name_probes", "name every probe and give its readings"},
    {"calibration.log_hours", "log some hours"},
    {"calibration.sort_rows", "sort the rows by time, and drop those that come twice"},
    {"calibration.power", "give volts times amperes at the bank; kW or mW by mistake?"},
    {"calibration.air", "give the air around the store in °C, not in °F or K"},
    {"calibration.unit_in_name", "the unit stands in the column's name"},
    {"calibration.radius_and_height", "give radius and height in metres, between them a comma"},
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
