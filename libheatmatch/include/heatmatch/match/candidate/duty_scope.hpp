#pragma once

#include <optional>
#include <string>
#include <vector>

#include "heatmatch/base/sentence.hpp"
#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/circuit/opens.hpp"
#include "heatmatch/parts/ampacity_table.hpp"
#include "heatmatch/setting/site.hpp"

namespace heatmatch {

/// Facts on which duties depend.
struct DutyScope {
    double cold_v = 0.0;     //!< open-circuit voltage at the record low [V]
    double lasting_a = 0.0;  //!< 1.25 times the short-circuit current [A]
    std::optional<ArrayPlace> array_on{};
    std::optional<Earthing> earthing{};
    std::optional<WiringCode> code{};   //!< duties of both codes where it is not stated
    std::vector<std::string> inside{};  //!< runs stated to lie inside a building
    std::vector<std::string> untold{};  //!< runs for which that is not stated

    /// Whether a wire enters a building; the greenhouse counts as one.
    [[nodiscard]] Answer enters_building() const;
    /// Whether panels or wires are on or in a building.
    [[nodiscard]] Answer on_building() const;
};
[[nodiscard]] DutyScope duty_scope(const Circuit& circuit, const Site& site);

/// Cold voltage above which duties begin: touch in wet places, and earth faults. @cite
/// iec-60364-4-41 @cite nec-690-41
inline constexpr double wet_step_v = 30.0;
/// Touch in dry places. @cite iec-60364-4-41
inline constexpr double dry_step_v = 60.0;
/// Arcs, from this voltage on. @cite nec-690-11
inline constexpr double arc_step_v = 80.0;

/// One of the steps, and whether it is reached.
struct DutyStep {
    double volts = 0.0;    //!< [V]
    bool reached = false;  //!< voltage above the step; for the last step, also equal to it
    Sentence begins{};     //!< duties that begin there
};
/// All three steps.
[[nodiscard]] std::vector<DutyStep> duty_steps(double cold_v);

}  // namespace heatmatch
