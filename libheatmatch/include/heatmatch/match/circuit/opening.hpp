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

/// What keeps a device from opening a circuit.
enum class Obstacle {
    none,
    not_told,        //!< a fact is missing
    no_place,        //!< it sits in no run, or in one that carries too little or too much for it
    other_duty,      //!< it is not there for that
    other_occasion,  //!< nothing makes it open then
    fuse,            //!< pulled under load it holds an arc
    made_for_ac,
    semiconductor,
    out_of_range,  //!< it is set to what it is not made for
    rating,        //!< fewer volts or amperes than it has to break
    conductors     //!< it leaves a conductor, or one conductor's poles are too weak
};

/// Whether a device opens a circuit, and what it has to break.
struct Opening {
    Answer answer = Answer::no;
    Obstacle obstacle = Obstacle::none;
    Sentence why{};
    double volts = 0.0;    //!< of the coldest morning [V]
    double amperes = 0.0;  //!< 1.25 times the short-circuit current of what it breaks [A]
    double rated_v = 0.0;  //!< most volts of a pair for the poles used; 0 without one [V]
    std::optional<double> rated_a{};     //!< of the pair whose volts suffice [A]
    bool unrated = false;                //!< no pair is printed: 30 V and 1 A are taken
    std::string breaker{};               //!< id of the control whose contacts it comes to
    std::vector<std::string> missing{};  //!< fields that would tell
};

/// The earth and the sun that openings are judged at.
struct OpeningSite {
    bool floating = true;  //!< no conductor is grounded solidly
    double irradiance_w_m2 = stc_irradiance_w_m2;
};

/// Of a site: one that nobody calls grounded floats, and then every conductor has to be opened.
[[nodiscard]] OpeningSite opening_site(const Site& site);

/// The run that a device sits in; null for one in none of the circuit.
[[nodiscard]] const RunParts* run_of(const Circuit& circuit, const PlacedDevice& placed);

/// What it has to break and what it may, the answer left out.
[[nodiscard]] Opening opening_load(const Circuit& circuit, const PlacedDevice& placed,
                                   const OpeningSite& site = {});

/// Taken where no direct-current rating is printed, as sheets of such parts often say; common
/// practice, no source.
inline constexpr DcRating unrated_pair{.v_dc = 30.0, .a_dc = 1.0, .poles = 1};

}  // namespace heatmatch
