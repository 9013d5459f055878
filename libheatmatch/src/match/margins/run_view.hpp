#pragma once

#include <optional>
#include <string>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// Input for the margins of one run.
struct RunView {
    const Circuit& circuit;
    const Site& site;
    const RunParts& parts;
    std::string subject{};
    double cold_voltage_v = 0.0;
    double current_a = 0.0;   //!< short-circuit current at the highest irradiance
    double code_isc_a = 0.0;  //!< short-circuit current at 1000 W/m2, for codes
    bool wet = false;         //!< the place is wet, or it lies in the ground
    bool at_element = false;
    std::optional<ConductorTemperature> temperature{};

    [[nodiscard]] const Surroundings& around() const { return parts.run.surroundings; }
    [[nodiscard]] bool in_bed() const { return around().kind == SurroundingsKind::bed; }
};

/// Current by the code: 1.56 Isc against the table for its installation method, and 1.25 Isc
/// against the same corrected for its surroundings; the result is the smaller headroom.
[[nodiscard]] Margin run_current_margin(const RunView& run);

/// Whether wire of that kind is permitted in its place.
[[nodiscard]] Margin placing_margin(const RunView& run);

/// Whether a wire of that kind is permitted there in any raceway; false for an unknown kind. Used
/// to choose a wire.
[[nodiscard]] bool kind_may_lie(const RunView& run);

[[nodiscard]] Margin sunlight_margin(const RunView& run);
[[nodiscard]] Margin wet_margin(const RunView& run);

}  // namespace heatmatch
