#include "heatmatch/match/wiring.hpp"

#include <algorithm>
#include <limits>

#include "heatmatch/match/run_margins.hpp"

namespace heatmatch {

namespace {

constexpr double largest_drop = 0.02;

double price_per_m(const Wire& wire) {
    return wire.price.typical().value_or(std::numeric_limits<double>::infinity());
}

/// The joints are not the wire's: they are judged, but do not choose.
bool would_do(const Circuit& circuit, const Site& site) {
    const std::vector<Margin> margins = run_margins(circuit, site);
    return std::all_of(margins.begin(), margins.end(), [](const Margin& margin) {
        return margin.name.starts_with("joint") || margin.severity == Severity::none;
    });
}

/// Amperes of a run in the brightest sun.
double brightest_a(const Circuit& circuit, const WireRun& run, const Site& site) {
    return site.bright_irradiance_w_m2 / stc_irradiance_w_m2 * circuit.short_circuit_current_a() *
           circuit.current_share(run);
}

/// Ohms are those of the conductor in the brightest sun.
void set_conductor_temperature(RunParts& parts) {
    if (parts.brightest && !parts.brightest->runaway) {
        parts.conductor_c = parts.brightest->conductor_c;
    }
}

/// The cheapest wire that would do with little loss; where all that would do lose more, the one
/// that loses least.
RunParts choose_wire(const Parts& parts, const Installation& installation, Circuit& circuit,
                     const WireRun& run, const std::vector<const Wire*>& by_price) {
    const double array_v = circuit.panel.panel.v_mp.value_or(0.0) * circuit.panels.series;
    const double current_a = circuit.short_circuit_current_a() * circuit.current_share(run);
    RunParts least_lossy{.run = run};
    for (const Wire* wire : by_price) {
        const bool rated = wire->voltage_rating_v.value_or(0.0) >= circuit.cold_voltage_v();
        if (!rated || !wire->ampacity_a) continue;
        RunParts trial = parts_of_run(parts, run, *wire);
        const bool lossy = trial.loop_ohm() * current_a > largest_drop * array_v;
        if (lossy && least_lossy.wire && trial.loop_ohm() >= least_lossy.loop_ohm()) continue;
        trial.brightest = trial.temperature(brightest_a(circuit, run, installation.site));
        circuit.runs = {trial};
        if (!would_do(circuit, installation.site)) continue;
        if (!lossy) return trial;
        least_lossy = trial;
    }
    return least_lossy;
}

}  // namespace

RunParts parts_of_run(const Parts& parts, const WireRun& run, const Wire& wire) {
    RunParts result{.run = run, .wire = wire};
    if (!wire.insulation.empty()) result.insulation = find_insulation(parts, wire.insulation);
    if (!run.connector.empty()) result.connector = find_connector(parts, run.connector);
    return result;
}

std::vector<RunParts> lay_runs(const Parts& parts, const Installation& installation,
                               const PanelInService& panel, Hookup panels, Hookup bank) {
    std::vector<RunParts> laid;
    std::vector<const Wire*> by_price;
    Circuit circuit{.panel = panel, .panels = panels};
    circuit.bank.hookup = bank;
    for (const WireRun& run : installation.runs) {
        if (run.chooses()) {
            if (by_price.empty()) {
                for (const Wire& wire : parts.wires) by_price.push_back(&wire);
                std::stable_sort(
                    by_price.begin(), by_price.end(),
                    [](const Wire* a, const Wire* b) { return price_per_m(*a) < price_per_m(*b); });
            }
            laid.push_back(choose_wire(parts, installation, circuit, run, by_price));
        } else {
            laid.push_back(parts_of_run(parts, run, find_wire(parts, run.wire)));
            laid.back().brightest =
                laid.back().temperature(brightest_a(circuit, run, installation.site));
        }
        set_conductor_temperature(laid.back());
    }
    return laid;
}

std::vector<PlacedDevice> place_devices(const Parts& parts, const Installation& installation) {
    std::vector<PlacedDevice> placed;
    for (const Device& device : installation.devices) {
        placed.push_back({.device = device, .control = find_control(parts, device.part)});
    }
    return placed;
}

}  // namespace heatmatch
