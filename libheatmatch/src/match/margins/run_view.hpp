#pragma once

#include <optional>
#include <string>

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/margins/margin.hpp"

namespace heatmatch {

/// One run as its margins see it.
struct RunView {
    const Circuit& circuit;
    const Site& site;
    const RunParts& parts;
    std::string subject{};
    double cold_voltage_v = 0.0;
    double current_a = 0.0;   //!< short-circuit current in the brightest sun
    double code_isc_a = 0.0;  //!< short-circuit current at 1000 W/m2, as codes count
    bool wet = false;         //!< the place, or that it lies in the ground
    bool at_element = false;
    std::optional<ConductorTemperature> temperature{};

    [[nodiscard]] const Surroundings& around() const { return parts.run.surroundings; }
    [[nodiscard]] bool in_bed() const { return around().kind == SurroundingsKind::bed; }
};

/// Current by the code: 1.56 Isc within the table for the way it is laid, and 1.25 Isc within the
/// same corrected for what is around it; the smaller headroom speaks.
[[nodiscard]] Margin run_current_margin(const RunView& run);

/// Whether wire of that kind may lie where it lies.
[[nodiscard]] Margin placing_margin(const RunView& run);

/// Whether a wire of that kind may lie there whatever it is laid in; where nothing is known of the
/// kind, it may not. For the choice of a wire.
[[nodiscard]] bool kind_may_lie(const RunView& run);

[[nodiscard]] Margin sunlight_margin(const RunView& run);
[[nodiscard]] Margin wet_margin(const RunView& run);

}  // namespace heatmatch
