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

/// What duties depend on.
struct DutyScope {
    double cold_v = 0.0;     //!< open, on the coldest morning [V]
    double lasting_a = 0.0;  //!< 1.25 times the short-circuit current [A]
    std::optional<ArrayPlace> array_on{};
    std::optional<Earthing> earthing{};
    std::optional<WiringCode> code{};   //!< duties of both where it is not stated
    std::vector<std::string> inside{};  //!< runs stated to lie inside a building
    std::vector<std::string> untold{};  //!< runs of which nobody stated it

    /// Whether a wire enters a building: the greenhouse is one.
    [[nodiscard]] Answer enters_building() const;
    /// Whether panels or wires are on or in a building.
    [[nodiscard]] Answer on_building() const;
};
[[nodiscard]] DutyScope duty_scope(const Circuit& circuit, const Site& site);

/// Cold volts above which duties begin: touch where wet and earth faults.
/// @cite iec-60364-4-41 @cite nec-690-41
inline constexpr double wet_step_v = 30.0;
/// Touch where dry. @cite iec-60364-4-41
inline constexpr double dry_step_v = 60.0;
/// Arcs, at that too. @cite nec-690-11
inline constexpr double arc_step_v = 80.0;

/// One of them, and whether it is reached.
struct DutyStep {
    double volts = 0.0;    //!< [V]
    bool reached = false;  //!< above it; of the last, at it too
    Sentence begins{};     //!< what does
};
/// The three of them.
[[nodiscard]] std::vector<DutyStep> duty_steps(double cold_v);

}  // namespace heatmatch
