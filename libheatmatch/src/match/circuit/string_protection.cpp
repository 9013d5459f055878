#include "heatmatch/match/circuit/string_protection.hpp"

#include <algorithm>

#include "heatmatch/match/circuit/code_current.hpp"
#include "heatmatch/match/circuit/opening.hpp"

namespace heatmatch {

bool in_a_string(const Circuit& circuit, const PlacedDevice& placed) {
    const RunParts* run = run_of(circuit, placed);
    if (run == nullptr || run->run.carries == Carried::string) return true;
    return circuit.panels.parallel == 1;
}

bool may_be_fed_backwards(const Circuit& circuit, const PlacedDevice& placed) {
    if (circuit.panels.parallel == 1) return false;
    if (placed.device.duty == Duty::protects_a_string) return in_a_string(circuit, placed);
    const RunParts* run = run_of(circuit, placed);
    return run != nullptr && run->run.carries == Carried::string;
}

std::optional<double> string_protection_a(const Circuit& circuit, const PlacedDevice& placed) {
    const Control& control = placed.control;
    if (placed.device.duty != Duty::protects_a_string || !protects_strings(control)) return {};
    if (!in_a_string(circuit, placed)) return {};
    // A fuse link melts at either direction of current.
    if (!is_fuse(control) && control.polarised.value_or(false)) return {};
    const Opening load = opening_load(circuit, placed);
    if (!load.rated_a || load.unrated) return {};
    double largest_a = 0.0;
    for (const DcRating& rating : control.dc_ratings) largest_a = std::max(largest_a, rating.a_dc);
    return largest_a;
}

double lasting_fed_a(const Circuit& circuit) {
    if (!circuit.unlike) {
        return (circuit.panels.parallel - 1) * lasting_current_a(circuit.panel.bright_isc_a());
    }
    return lasting_current_a(circuit.fed_current_a());
}

double lasting_fed_a(const Circuit& circuit, std::size_t string) {
    if (!circuit.unlike) return lasting_fed_a(circuit);
    return lasting_current_a(circuit.fed_current_a(string));
}

}  // namespace heatmatch
