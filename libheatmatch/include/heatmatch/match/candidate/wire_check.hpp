#pragma once

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "heatmatch/base/choice.hpp"
#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/candidate/candidate.hpp"

namespace heatmatch {

/// What of a run of wire a temperature harms.
enum class WirePart { insulation, joint, plating };
inline constexpr auto wire_part_words =
    std::to_array<std::string_view>({"insulation", "joint", "plating"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(WirePart) {
    return wire_part_words;
}

/// One limit of a run of wire.
struct WireLimit {
    WirePart what = WirePart::insulation;
    double limit_c = 0.0;
    Severity consequence = Severity::danger;  //!< once it is passed
    std::string source{};
};

/// From where along the wire an insulation would do beside the element.
struct InsulationReach {
    std::string insulation{};  //!< id
    std::string family{};
    double limit_c = 0.0;
    std::optional<double> from_m{};  //!< behind the terminal [m]; nothing: nowhere on this run
};

/// One run: how hot it gets, what sets its limit, what melts, and which wire would do.
struct WireCheck {
    std::string run{};
    std::string wire{};                   //!< id; empty where none was found
    Sentence gauge{};                     //!< `2.08 mm2`, or `14 AWG`
    double current_a = 0.0;               //!< short-circuit current of the brightest sun [A]
    std::optional<double> conductor_c{};  //!< at its hottest place [°C]
    std::optional<double> far_c{};        //!< away from the element [°C]
    bool runaway = false;                 //!< no steady temperature
    std::vector<WireLimit> limits{};      //!< lowest first
    std::optional<WirePart> decides{};    //!< the lowest of them
    Severity severity = Severity::not_assessed;
    std::optional<double> code_ampacity_a{};       //!< by the table for its laying [A]
    std::optional<double> corrected_ampacity_a{};  //!< the same for what is around it [A]
    std::optional<double> balance_ampacity_a{};    //!< that its own balance allows at its limit [A]
    double drop_v = 0.0;                           //!< there and back, joints too [V]
    double heat_w = 0.0;                           //!< made in it [W]
    bool at_element = false;                       //!< the run at the element: heat comes down it
    /// Of a run at the element, coolest first; empty where the air around it is not stated.
    std::vector<InsulationReach> reach{};
    Sentence sentence{};  //!< what happens to it
    /// The cheapest wire of the catalog that would do, where this one does not; nothing where none
    /// would, or without a catalog.
    std::optional<Wire> would_do{};
    Sentence would_do_gauge{};
    std::vector<Assumption> assumed{};
};

/// Every run of a candidate, judged as its margins are. `catalog` null: the parts it was chosen
/// among, if they are still at hand.
[[nodiscard]] std::vector<WireCheck> check_wires(const Candidate& candidate,
                                                 const Parts* catalog = nullptr);

}  // namespace heatmatch
