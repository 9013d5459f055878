#pragma once

#include <array>
#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "heatmatch/base/choice.hpp"
#include "heatmatch/base/parallel.hpp"
#include "heatmatch/base/sentence.hpp"
#include "heatmatch/base/units.hpp"
#include "heatmatch/match/candidate/candidate.hpp"
#include "heatmatch/operation/meter/readings.hpp"
#include "heatmatch/parts/parts.hpp"

namespace heatmatch {

/// What may be behind readings.
enum class FaultKind {
    as_expected,
    element_open,                //!< one or more parallel branches of the bank, or all of it
    turns_shorted,               //!< a share of one element
    section_bypassed,            //!< sections of panels, all in one string
    panel_missing,               //!< of a string, or a string of the array
    hot_joint,                   //!< extra ohms
    low_sun,                     //!< less on the panels than on the sun meter: shade, angle, haze
    dirt,                        //!< all panels alike
    aged,                        //!< less current and more series resistance
    panels_hooked_otherwise,     //!< as many panels
    bank_hooked_otherwise,       //!< as many elements
    another_element,             //!< all alike, of other ohms
    another_number_of_elements,  //!< all as described
    fill_conductivity            //!< of the store
};
inline constexpr auto fault_words = std::to_array<std::string_view>(
    {"as expected", "element open", "turns shorted", "section bypassed", "panel missing",
     "hot joint", "low sun", "dirt", "aged", "panels hooked otherwise", "bank hooked otherwise",
     "another element", "another number of elements", "fill conductivity"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(FaultKind) {
    return fault_words;
}

/// Errors of the meters, one standard deviation, and what counts as one explanation.
struct DiagnosisOptions {
    double volt_share = 0.01;
    double volt_v = 0.1;
    double ampere_share = 0.02;
    double ampere_a = 0.05;
    double irradiance_share = 0.05;
    double panel_temperature_k = 3.0;
    double ohm_share = 0.02;
    double ohm_ohm = 0.1;
    double temperature_k = 5.0;  //!< of sheath and store
    double threshold = 5.0;      //!< of the score, within which explanations are not told apart
    std::size_t most_rows = 12;  //!< of a long log that are used, spread over the current
    double typical_sun_w_m2 = 800.0;  //!< that the next measurement is planned for
    const Parts* parts = nullptr;     //!< whose elements are named where their ohms were found
    Progress progress{};
};

/// A number that was fitted; `low` and `high` are two standard deviations away, within its bounds.
struct FittedValue {
    Sentence name{};
    double value = 0.0;
    double low = 0.0;
    double high = 0.0;
    Unit unit{};
};

/// One explanation of the readings.
struct Hypothesis {
    FaultKind kind = FaultKind::as_expected;
    std::string name{};
    Sentence sentence{};  //!< what it means, with the fitted numbers, and what to do
    double misfit = 0.0;  //!< chi-square of readings and priors, robust beyond three errors
    double score = 0.0;   //!< misfit + 1 for each fitted number + its rarity (0 to 3)
                          //!< + 3 for a fault too small to be called one
    double weight = 0.0;  //!< share among all, see diagnose()
    std::vector<FittedValue> fitted{};
    Sentences evidence{};  //!< what was read against what it predicts
};

/// What to measure next to tell explanations apart.
struct NextMeasurement {
    Sentence reading{};
    Sentence how{};
    Sentence tells{};
    double separation = 0.0;  //!< of the predictions, in errors of the meter
};

/// Explanations of readings, the best first.
struct Diagnosis {
    std::vector<Hypothesis> ranked{};
    std::size_t group = 1;                //!< so many of the first explain the readings alike
    bool cannot_tell = false;             //!< the group has more than one
    bool unexplained = false;             //!< not even the best fits the readings
    std::vector<NextMeasurement> next{};  //!< best first
    Sentence verdict{};
    Sentence bank_ohms{};  //!< volts over amperes that were read, beside the ohms described
    Sentences remarks{};
};

/// Compares readings with the circuit under each explanation. The sun and the cell temperature of
/// each row are fitted with it, held by what was measured: an irradiance, the short-circuit current
/// as sun meter, or nothing; the same holds for the element's ohms, their ratio hot to cold, and
/// the panels' current and volts, held by the band of what is known of them, so that a tolerance is
/// no fault. Temperatures of sheath and store are compared with the closed form of the bed. Checks
/// the readings first as check_readings() does. A weight is `exp(-score/2)` over the sum of all,
/// with two limits on what readings carry: one row may be misread, once in twenty times, so the
/// score counts at most `2 ln 20` a row above the best; and explanations that the readings do not
/// tell apart have equal weights. Throws InvalidInput where nothing can be used, Interrupted where
/// the progress callback asks to stop.
[[nodiscard]] Diagnosis diagnose(const Candidate& candidate, const Readings& readings,
                                 const DiagnosisOptions& options = {});

}  // namespace heatmatch
