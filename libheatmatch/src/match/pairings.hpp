#pragma once

#include <map>
#include <string>
#include <vector>

#include "heatmatch/match/limits.hpp"
#include "heatmatch/match/rank.hpp"

namespace heatmatch {

/// A group of panels with what all its pairings share.
struct GroupContext {
    const OwnedPanels* owned = nullptr;
    PanelInService panel{};
    std::vector<DiodeCurve> today{};  //!< of one panel, at each condition
};

/// An element that may be used, with how many of it.
struct AllowedElement {
    const Element* element = nullptr;
    int owned = 0;
    int most = 0;
};

/// One pairing, as the screen sees it: numbers and indices only.
struct Pairing {
    std::size_t group = 0;
    std::size_t wiring = 0;
    std::size_t bank = 0;
    double power_w = 0.0;  //!< averaged over the conditions
    double headroom = 1.0;
    double price = 0.0;  //!< infinite if unknown
    int not_assessed = 0;
    std::string reason{};  //!< empty: no danger
};

/// A hook-up of panels with the runs as laid for one hook-up of elements.
struct Wiring {
    Circuit frame{};  //!< the circuit without its elements
    ArrayCurve bright{};
    double wire_ohm = 0.0;
    double run_price = 0.0;              //!< of chosen wire; infinite if unknown
    Screened screened{};                 //!< over the margins that no element changes
    int not_assessed = 0;                //!< among them
    std::optional<double> terminal_c{};  //!< where the wire meets the elements
};

/// Everything the ranking looks at, and the light record of each pairing.
struct Pairings {
    std::vector<GroupContext> groups{};
    std::vector<Bank> banks{};
    std::vector<Wiring> wirings{};
    std::vector<Pairing> all{};
    std::map<std::string, std::size_t> left_out{};  //!< reason -> pairings not even screened
};

/// Share of a ranking's progress that the screen takes.
inline constexpr double screening_share = 0.5;

/// Screens every pairing. Throws Interrupted where the progress callback asks for it.
[[nodiscard]] Pairings screen_all(const Parts& parts, const Installation& installation,
                                  const RankOptions& options);

/// The circuit of a pairing, with copies of its parts.
[[nodiscard]] Circuit circuit_of(const Pairings& pairings, const Pairing& pairing);

}  // namespace heatmatch
