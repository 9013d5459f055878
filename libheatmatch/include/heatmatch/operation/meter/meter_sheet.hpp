#pragma once

#include <optional>
#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/base/units.hpp"
#include "heatmatch/match/candidate/candidate.hpp"

namespace heatmatch {

/// What a meter should read, with the ends of what is known of panels and ohms. The errors of the
/// meters come on top.
struct ExpectedBand {
    double low = 0.0;
    double typical = 0.0;
    double high = 0.0;
};

/// Errors of ordinary meters that a sheet states beside its bands; common practice, no source.
inline constexpr double sheet_meter_error = 0.01;
inline constexpr double sheet_sun_meter_error = 0.05;

/// Cells are warmer than the back of their panel [K]; from memory.
inline constexpr double cell_above_back_k = 2.0;

/// What the sheet is made for.
struct MeterSheetOptions {
    std::vector<double> irradiance_w_m2{1000.0, 800.0, 600.0, 400.0, 200.0, 100.0};
    double air_c = 10.0;             //!< around warmed-up panels: cells at air + G (NOCT - 20)/800
    double uncovered_cell_c = 25.0;  //!< of panels uncovered a moment ago [°C]
};

/// Expected readings in one sun at one cell temperature.
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

/// One thing to measure or to look at. Numbers that are not known stay out; `expect` says so.
struct MeterCheck {
    std::string letter{};  //!< `A`
    Sentence reading{};    //!< what is read
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

/// What to expect of a circuit on the meter.
struct MeterSheet {
    Sentence title{};
    std::vector<MeterRow>
        rows{};  //!< warmed-up panels by falling sun, then the same just uncovered
    std::vector<MeterCheck> checks{};
    std::vector<Assumption> assumed{};
    Sentences not_known{};  //!< fields that are missing, each with its remedy
    Sentences remarks{};
};

/// The sheet of a circuit, standing or chosen. Volts and amperes by the panels' single diode into
/// the ohms of bank and wire; the band takes the ends of panel current and ohms, as deliver() does.
/// Throws InvalidInput for options out of range; a part that is not known never throws.
[[nodiscard]] MeterSheet meter_sheet(const Candidate& candidate,
                                     const MeterSheetOptions& options = {});

}  // namespace heatmatch
