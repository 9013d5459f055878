#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "heatmatch/base/field.hpp"
#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/candidate/candidate.hpp"

namespace heatmatch {

/// Readings at one time; values that were not measured are empty. NaN is a failed reading, an
/// infinite resistance an open circuit.
struct Reading {
    std::optional<double> unix_time_s{};          //!< since 1970-01-01 00:00 UTC [s]
    std::optional<double> irradiance_w_m2{};      //!< on the plane of the panels [W/m2]
    std::optional<double> panel_temperature_c{};  //!< back of a panel [°C]
    std::optional<double> array_v{};              //!< at the array while it heats [V]
    std::optional<double> bank_v{};               //!< at the bank [V]
    std::optional<double> bank_a{};               //!< [A]
    std::optional<double> open_v{};               //!< array, disconnected [V]
    std::optional<double> short_a{};              //!< array, shorted [A]
    std::optional<double> element_ohm{};          //!< one element, cold, disconnected [ohm]
    std::optional<double> bank_ohm{};             //!< bank, cold, disconnected [ohm]
    std::optional<double> sheath_c{};             //!< hottest sheath [°C]
    std::optional<double> store_c{};              //!< bulk of the store [°C]
    std::optional<double> air_c{};                //!< outdoors [°C]

    friend bool operator==(const Reading&, const Reading&) = default;
};
[[nodiscard]] std::span<const Field> reading_fields();

/// Readings of minutes, hours or weeks, in order.
struct Readings {
    std::vector<Reading> rows{};
    Sentences remarks{};  //!< omitted or suspicious readings, counted
};

/// Reads CSV whose header names fields of a reading. A text without a line break is the path of a
/// file. A cell is a number with or without a unit (`412 mV`, `104 °F`), `nan` for a failed
/// reading, or `OL` for a resistance beyond the meter's range; an empty cell was not measured.
/// Throws InvalidInput naming the line and the nearest known column, FileError for a file that
/// cannot be read.
[[nodiscard]] Readings read_readings_csv(std::string_view text_or_path);

/// The readings without impossible ones, which are counted in the remarks: failed readings, a
/// thermocouple that is open (below -200, above 1200 °C) or constant while the power changes,
/// single values far beyond those of the circuit. Throws InvalidInput for times that do not
/// increase, for reversed leads, and for columns that seem to be in another unit: mV, mA, kW/m2,
/// percent of the sun, °F.
[[nodiscard]] Readings check_readings(const Readings& readings, const Candidate& candidate);

}  // namespace heatmatch
