#pragma once

#include <optional>
#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/base/units.hpp"
#include "heatmatch/match/candidate/candidate.hpp"

namespace heatmatch {

/// Expected reading of a meter, with the band of panels and resistance. Errors of the meter are
/// additional.
struct ExpectedBand {
    double low = 0.0;
    double typical = 0.0;
    double high = 0.0;
};

/// Errors of ordinary meters, stated on a sheet beside its bands; common practice, no source.
inline constexpr double sheet_meter_error = 0.01;
inline constexpr double sheet_sun_meter_error = 0.05;

/// Cell temperature above the back of the panel [K]; from memory.
inline constexpr double cell_above_back_k = 2.0;

/// Options of a meter sheet.
struct MeterSheetOptions {
    std::vector<double> irradiance_w_m2{1000.0, 800.0, 600.0, 400.0, 200.0, 100.0};
    double air_c = 10.0;             //!< around warm panels: cells at air + G (NOCT - 20)/800
    double uncovered_cell_c = 25.0;  //!< of panels uncovered a moment before [°C]
};

/// Expected readings at one irradiance and one cell temperature.
struct MeterRow {
    double irradiance_w_m2 = 0.0;
    double cell_temperature_c = 0.0;
    ExpectedBand open_v{};   //!< array, disconnected [V]
    ExpectedBand short_a{};  //!< array, shorted [A]
    ExpectedBand array_v{};  //!< at the array while it heats [V]
    ExpectedBand bank_v{};   //!< at the bank [V]
    ExpectedBand bank_a{};   //!< [A]
    ExpectedBand bank_w{};   //!< [W]
};

/// One thing to measure or inspect. Unknown numbers are empty; `expect` reports that.
struct MeterCheck {
    std::string letter{};  //!< `A`
    Sentence reading{};    //!< reading to take
    Sentence how{};
    Sentence expect{};
    std::optional<double> low{};
    std::optional<double> typical{};
    std::optional<double> high{};
    Unit unit{};  //!< of low, typical and high
    Sentence if_low{};
    Sentence if_high{};
    std::string source{};
};

/// Expected meter readings of a circuit.
struct MeterSheet {
    Sentence title{};
    std::vector<MeterRow>
        rows{};  //!< warm panels by decreasing irradiance, then the same just uncovered
    std::vector<MeterCheck> checks{};
    /// For a reader without a sun meter: the resistance of the bank, which no sun changes, and the
    /// short-circuit current as sun meter.
    Sentences without_sun_meter{};
    std::vector<Assumption> assumed{};
    Sentences missing{};  //!< missing fields, each with its remedy
    Sentences remarks{};
};

/// The sheet of an existing or proposed circuit. Voltage and current follow from the panels' single
/// diode and the resistance of bank and wire; the band includes the ends of panel current and
/// resistance, as in deliver(). Throws InvalidInput for options out of range, never for a missing
/// part.
[[nodiscard]] MeterSheet meter_sheet(const Candidate& candidate,
                                     const MeterSheetOptions& options = {});

}  // namespace heatmatch
