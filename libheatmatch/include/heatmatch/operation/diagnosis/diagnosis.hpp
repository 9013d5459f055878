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

/// Possible causes of readings.
enum class FaultKind {
    as_expected,
    element_open,                //!< one or more parallel branches of the bank, or the whole bank
    turns_shorted,               //!< part of one element
    section_bypassed,            //!< sections of panels, all in one string
    panel_missing,               //!< of a string, or a string of the array
    hot_joint,                   //!< additional resistance
    low_sun,                     //!< irradiance lower than at the sun meter: shade, angle, haze
    dirt,                        //!< all panels equally
    aged,                        //!< lower current and higher series resistance
    panels_hooked_otherwise,     //!< same number of panels
    bank_hooked_otherwise,       //!< same number of elements
    another_element,             //!< all equal, with another resistance
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

/// Errors of the meters, one standard deviation, and the criterion for equal explanations.
struct DiagnosisOptions {
    double volt_share = 0.01;
    double volt_v = 0.1;
    double ampere_share = 0.02;
    double ampere_a = 0.05;
    double irradiance_share = 0.05;
    double panel_temperature_k = 3.0;
    double ohm_share = 0.02;
    double ohm_ohm = 0.1;
    double temperature_k = 5.0;       //!< of sheath and store
    double threshold = 5.0;           //!< score difference below which explanations are not
                                      //!< distinguished
    std::size_t most_rows = 12;       //!< rows of a long log that are used, spread over the current
    double typical_sun_w_m2 = 800.0;  //!< for planning the next measurement
    const Parts* parts = nullptr;     //!< catalog from which elements of the fitted resistance are
                                      //!< named
    Progress progress{};
};

/// A fitted number; `low` and `high` are two standard deviations away, within its bounds.
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
    Sentence sentence{};  //!< meaning, with the fitted numbers, and what to do
    double misfit = 0.0;  //!< chi-square of readings and priors, robust beyond three errors
    double score = 0.0;   //!< misfit + 1 for each fitted number + its rarity (0 to 3) + 3 for a
                          //!< fault too small to count as one
    double weight = 0.0;  //!< share of the total, see diagnose()
    std::vector<FittedValue> fitted{};
    Sentences evidence{};  //!< reading and predicted value
};

/// Next measurement that would separate explanations.
struct NextMeasurement {
    Sentence reading{};
    Sentence how{};
    Sentence predictions{};
    double separation = 0.0;  //!< of the predictions, in units of meter error
};

/// Explanations of readings, best first.
struct Diagnosis {
    std::vector<Hypothesis> ranked{};
    std::size_t group = 1;                //!< number of first explanations that fit the readings
                                          //!< equally
    bool indistinguishable = false;       //!< the group has more than one
    bool unexplained = false;             //!< even the best does not fit the readings
    std::vector<NextMeasurement> next{};  //!< best first
    Sentence verdict{};
    Sentence bank_ohms{};  //!< voltage over current as read, beside the described resistance
    Sentences remarks{};
};

/// Compares readings with the circuit under each explanation. The irradiance and cell temperature
/// of each row are fitted as well, constrained by a measurement: an irradiance, the short-circuit
/// current as sun meter, or none. The element's resistance, its hot to cold ratio, and the panels'
/// current and voltage are also fitted, constrained by their known bands, so that a tolerance is
/// not a fault. Temperatures of sheath and store are compared with the closed form of the bed.
/// Readings are first checked by check_readings().
/// A weight is `exp(-score/2)` over the sum of all, with two limits: one row in twenty may be
/// misread, so the score counts at most `2 ln 20` per row above the best; and explanations that the
/// readings do not distinguish have equal weights. Throws InvalidInput where no reading can be
/// used, Interrupted where the progress callback requests a stop.
[[nodiscard]] Diagnosis diagnose(const Candidate& candidate, const Readings& readings,
                                 const DiagnosisOptions& options = {});

}  // namespace heatmatch
