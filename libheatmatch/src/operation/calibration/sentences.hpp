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
