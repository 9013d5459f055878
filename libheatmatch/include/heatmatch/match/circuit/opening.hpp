#pragma once

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "heatmatch/base/choice.hpp"
#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/solar/single_diode.hpp"

namespace heatmatch {

/// When a circuit has to open.
enum class Occasion { by_hand, thermostat, limit, fault };

enum class Answer { yes, no, unknown };
inline constexpr auto answer_words = std::to_array<std::string_view>({"yes", "no", "unknown"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(Answer) {
    return answer_words;
}

/// Reason why a device does not open a circuit.
enum class Obstacle {
    none,
    not_told,        //!< a fact is missing
    no_place,        //!< it is in no run, or in one with too little or too much current for it
    other_duty,      //!< it has another duty
    other_occasion,  //!< nothing operates it on this occasion
    fuse,            //!< pulled under load it sustains an arc
    made_for_ac,
    semiconductor,
    out_of_range,  //!< its set point is outside its range
    rating,        //!< its rated voltage or current is too low
    conductors     //!< it does not open every conductor, or the poles in one conductor are too weak
};

/// Whether a device opens a circuit, and the voltage and current it has to break.
struct Opening {
    Answer answer = Answer::no;
    Obstacle obstacle = Obstacle::none;
    Sentence why{};
    double volts = 0.0;    //!< at the record low [V]
    double amperes = 0.0;  //!< 1.25 times the short-circuit current to be broken [A]
    double rated_v = 0.0;  //!< highest voltage of a pair for the poles used; 0 without one [V]
    std::optional<double> rated_a{};     //!< current of the pair with sufficient voltage [A]
    bool unrated = false;                //!< no pair is printed: 30 V and 1 A are assumed
    std::string breaker{};               //!< id of the control whose contacts open
    std::vector<std::string> missing{};  //!< fields to state
};

/// Earthing and irradiance for which openings are judged.
struct OpeningSite {
    bool floating = true;  //!< no conductor is solidly grounded
    double irradiance_w_m2 = stc_irradiance_w_m2;
};

/// For a site. An array counts as floating unless stated as grounded; then every conductor has to
/// be opened.
[[nodiscard]] OpeningSite opening_site(const Site& site);

/// The run in which a device sits; null if it is in none of the circuit.
[[nodiscard]] const RunParts* run_of(const Circuit& circuit, const PlacedDevice& placed);

/// Voltage and current it has to break and its ratings, without the result.
[[nodiscard]] Opening opening_load(const Circuit& circuit, const PlacedDevice& placed,
                                   const OpeningSite& site = {});

/// Assumed where no direct-current rating is printed, as is often stated for such parts; common
/// practice, no source.
inline constexpr DcRating unrated_pair{.v_dc = 30.0, .a_dc = 1.0, .poles = 1};

}  // namespace heatmatch
