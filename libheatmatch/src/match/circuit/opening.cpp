#include "heatmatch/match/circuit/opening.hpp"

#include <algorithm>

#include "heatmatch/match/circuit/code_current.hpp"

namespace heatmatch {

OpeningSite opening_site(const Site& site) {
    return {.floating = site.earthing != Earthing::grounded,
            .irradiance_w_m2 = site.bright_irradiance_w_m2};
}

const RunParts* run_of(const Circuit& circuit, const PlacedDevice& placed) {
    const auto found = std::find_if(
        circuit.runs.begin(), circuit.runs.end(),
        [&placed](const RunParts& parts) { return parts.run.name == placed.device.run; });
    return found == circuit.runs.end() ? nullptr : &*found;
}

Opening opening_load(const Circuit& circuit, const PlacedDevice& placed, const OpeningSite& site) {
    const RunParts* run = run_of(circuit, placed);
    // The branch that opens last breaks the whole current; a string breaks its own.
    const bool of_string = placed.device.duty == Duty::protects_a_string ||
                           (run != nullptr && run->run.carries == Carried::string);
    const double share_a =
        of_string && circuit.unlike
            ? circuit.string_current_a()
            : circuit.short_circuit_current_a() / (of_string ? circuit.panels.parallel : 1);
    Opening opening{.volts = circuit.cold_voltage_v(),
                    .amperes = lasting_current_a(share_a, site.irradiance_w_m2),
                    .unrated = placed.control.dc_ratings.empty()};
    Control rated = placed.control;
    if (opening.unrated && !rated.ac_only.value_or(false)) rated.dc_ratings = {unrated_pair};
    const int used = std::min(placed.device.poles_used,
                              rated.poles ? *poles_of(rated) : placed.device.poles_used);
    for (const DcRating& rating : rated.dc_ratings) {
        if (rating.poles <= used) opening.rated_v = std::max(opening.rated_v, rating.v_dc);
    }
    opening.rated_a = breaking_current_a(rated, opening.volts, used);
    return opening;
}

}  // namespace heatmatch
