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

/// Part of a run of wire with a temperature limit.
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
    Severity consequence = Severity::danger;  //!< severity beyond it
    std::string source{};
};

/// Distance from the element from which on an insulation is suitable.
struct InsulationReach {
    std::string insulation{};  //!< id
    std::string family{};
    double limit_c = 0.0;
    std::optional<double> from_m{};  //!< from the terminal [m]; empty: nowhere on this run
};

/// One run: its temperature, governing limit and consequence, and a suitable wire.
struct WireCheck {
    std::string run{};
    std::string wire{};                   //!< id; empty where none was found
    Sentence gauge{};                     //!< `2.08 mm2`, or `14 AWG`
    double current_a = 0.0;               //!< short-circuit current at the highest irradiance [A]
    std::optional<double> conductor_c{};  //!< at its hottest place [°C]
    std::optional<double> far_c{};        //!< away from the element [°C]
    bool runaway = false;                 //!< no steady temperature
    std::vector<WireLimit> limits{};      //!< lowest first
    std::optional<WirePart> limiting_part{};  //!< part with the lowest limit
    Severity severity = Severity::not_assessed;
    std::optional<double> code_ampacity_a{};       //!< from the table for its installation method
                                                   //!< [A]
    std::optional<double> corrected_ampacity_a{};  //!< the same, corrected for its surroundings [A]
    std::optional<double> balance_ampacity_a{};    //!< current at which its own heat balance
                                                   //!< reaches the limit [A]
    double drop_v = 0.0;                           //!< there and back, joints included [V]
    double heat_w = 0.0;                           //!< heat generated in it [W]
    bool at_element = false;                       //!< the run at the element, heated by conduction
                                                   //!< from it
    /// For a run at the element, coolest first; empty where the air around it is not stated.
    std::vector<InsulationReach> reach{};
    Sentence sentence{};  //!< consequence for the run
    /// The cheapest suitable wire of the catalog, where this one is not suitable; empty where none
    /// is, or without a catalog.
    std::optional<Wire> sufficient_wire{};
    Sentence sufficient_gauge{};
    std::vector<Assumption> assumed{};
};

/// Every run of a candidate, assessed as in its margins. `catalog` null: the parts from which it
/// was chosen, if they are available.
[[nodiscard]] std::vector<WireCheck> check_wires(const Candidate& candidate,
                                                 const Parts* catalog = nullptr);

}  // namespace heatmatch
