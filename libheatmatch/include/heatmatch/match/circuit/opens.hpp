#pragma once

#include <optional>
#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/solar/single_diode.hpp"

namespace heatmatch {

/// When a circuit has to open.
enum class Occasion { by_hand, thermostat, limit, fault };

enum class Answer { yes, no, unknown };

/// What keeps a device from opening a circuit.
enum class Obstacle {
    none,
    not_told,        //!< a fact is missing
    no_place,        //!< it sits in no run, or in one that carries a part only
    other_duty,      //!< it is not there for that
    other_occasion,  //!< nothing makes it open then
    fuse,            //!< pulled under load it holds an arc
    made_for_ac,
    semiconductor,
    rating,     //!< fewer volts or amperes than it has to break
    conductors  //!< it leaves a conductor, or one conductor's poles are too weak
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

/// Can this device open this circuit, here? Its direct volts and amperes have to suffice.
/// - By hand: operated by hand in a run that carries the whole circuit, it opens all conductors
///   that are not solidly grounded together; of a floating array the poles in one conductor break
///   the whole volts after an earth fault. Where no pair is printed for so few poles, volts share
///   out evenly over the poles of a pair (from memory). @cite nec-690-13
/// - Thermostat, limit: it senses, and its own contacts or what it drives open; a limit stays open,
///   is set, and does not rely on a semiconductor, which fails shorted.
/// - Fault: a string fuse that the other strings can blow, or what a detector of faults drives.
///   A short of the panels themselves is hardly more than their working current.
[[nodiscard]] Opening opens(const Circuit& circuit, const PlacedDevice& placed, Occasion occasion,
                            const OpeningSite& site = {});

/// What it has to break and what it may, the answer left out.
[[nodiscard]] Opening opening_load(const Circuit& circuit, const PlacedDevice& placed,
                                   const OpeningSite& site = {});

/// Taken where no direct-current rating is printed, as sheets of such parts often say; common
/// practice, no source.
inline constexpr DcRating unrated_pair{.v_dc = 30.0, .a_dc = 1.0, .poles = 1};

/// Whether it senses a temperature and stays open once it has opened.
[[nodiscard]] bool is_limit(const PlacedDevice& placed);

/// The device of a circuit that opens for a limit of it; null without one that surely does.
[[nodiscard]] const PlacedDevice* opening_limit(const Circuit& circuit);

}  // namespace heatmatch
