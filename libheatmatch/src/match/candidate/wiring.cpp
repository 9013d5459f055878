#include "heatmatch/match/candidate/wiring.hpp"

#include <algorithm>
#include <limits>

#include "heatmatch/heat/air.hpp"
#include "heatmatch/match/margins/element_margins.hpp"
#include "heatmatch/match/margins/run_margins.hpp"
#include "heatmatch/match/margins/sheath_margins.hpp"
#include "heatmatch/match/margins/tail_margins.hpp"

namespace heatmatch {

namespace {

constexpr double largest_drop = 0.02;

double price_per_m(const Wire& wire) {
    return wire.price.typical().value_or(std::numeric_limits<double>::infinity());
}

/// Margins that do not exclude a wire: its joints, and facts that a place lacks for any wire.
bool chooses_none(const Margin& margin) {
    return margin.name.find("joint") != std::string::npos || margin.name == "placing";
}

/// Insulation that is dried by its element excludes a wire only near its dry limit.
bool only_dries(const Margin& margin) {
    return margin.name == "insulation" && margin.severity == Severity::caution &&
           margin.headroom.value_or(-1.0) >= near_limit;
}

/// Joints do not depend on the wire: they are assessed, but do not affect the choice. Where its
/// kind is not permitted, no wire is chosen.
bool would_do(const Circuit& circuit, const Site& site, const RunParts& run) {
    if (!wire_may_lie(circuit, site, run)) return false;
    const std::vector<Margin> margins = run_margins(circuit, site, run);
    return std::all_of(margins.begin(), margins.end(), [](const Margin& margin) {
        return chooses_none(margin) || only_dries(margin) || margin.severity == Severity::none;
    });
}

/// Current of a run at the highest irradiance.
double brightest_a(const Circuit& circuit, const WireRun& run, const Site& site) {
    return site.bright_irradiance_w_m2 / stc_irradiance_w_m2 * circuit.short_circuit_current_a() *
           circuit.current_share(run);
}

/// Resistance is that of the conductor at the highest irradiance.
void set_conductor_temperature(RunParts& parts) {
    if (parts.brightest && !parts.brightest->runaway) {
        parts.conductor_c = parts.brightest->conductor_c;
    }
}

bool is_lossy(const RunParts& run, const Circuit& circuit) {
    const double array_v = circuit.label_vmp_v();
    const double current_a = circuit.short_circuit_current_a() * circuit.current_share(run.run);
    return run.loop_ohm() * current_a > largest_drop * array_v;
}

/// The cheapest suitable wire with a small loss; if all suitable ones lose more, the one with the
/// smallest loss.
RunParts choose_wire(const Parts& parts, const Installation& installation, Circuit& circuit,
                     std::size_t index, const std::vector<const Wire*>& by_price) {
    const WireRun& run = installation.runs[index];
    RunParts least_lossy{.run = run};
    for (const Wire* wire : by_price) {
        const bool rated = wire->voltage_rating_v.value_or(0.0) >= circuit.cold_voltage_v();
        if (!rated) continue;
        RunParts trial = parts_of_run(parts, run, *wire);
        const bool lossy = is_lossy(trial, circuit);
        if (lossy && least_lossy.wire && trial.loop_ohm() >= least_lossy.loop_ohm()) continue;
        trial.brightest = trial.temperature(brightest_a(circuit, run, installation.site));
        circuit.runs[index] = trial;
        if (!would_do(circuit, installation.site, circuit.runs[index])) continue;
        if (!lossy) return trial;
        least_lossy = trial;
    }
    return least_lossy;
}

/// The smallest headroom of a wire at the element: above 0 with a caution, 1 without; empty
/// where it is not suitable. A missing table of the code for a high-temperature wire does not
/// exclude it.
std::optional<double> headroom_at_element(const std::vector<ElementSeen>& ends,
                                          const Installation& installation) {
    const Circuit& circuit = ends.front().circuit;
    const RunParts& tail = *circuit.run_at_element();
    const std::string subject = "run \"" + tail.run.name + '"';
    const Site& site = installation.site;
    if (!wire_may_lie(circuit, site, tail)) return std::nullopt;
    double headroom = 1.0;
    const auto passes = [&](const Margin& margin) {
        if (margin.subject != subject || chooses_none(margin)) return true;
        if (margin.severity == Severity::none || only_dries(margin)) return true;
        if (margin.severity == Severity::not_assessed) return margin.name == "run current";
        headroom = std::min(headroom, margin.headroom.value_or(-1.0));
        return margin.severity == Severity::caution && headroom > 0.0;
    };
    const auto all_pass = [&passes](const std::vector<Margin>& margins) {
        return std::all_of(margins.begin(), margins.end(), passes);
    };
    if (!all_pass(run_margins(circuit, site))) return std::nullopt;
    for (const ElementSeen& end : ends) {
        if (!all_pass(tail_margins(end.circuit, site, end.bright, end.heat))) return std::nullopt;
    }
    return headroom;
}

/// Where the elements of a circuit meet the wire: equal elements once.
std::vector<ElementSeen> ends_of(const Circuit& circuit, const Extremes& bright) {
    if (circuit.bank.unlike) return elements_seen(circuit, bright);
    return {{.circuit = circuit, .bright = bright, .heat = heat_of(circuit, bright)}};
}

}  // namespace

std::vector<const Wire*> wires_by_price(const Parts& parts) {
    std::vector<const Wire*> by_price;
    by_price.reserve(parts.wires.size());
    for (const Wire& wire : parts.wires) by_price.push_back(&wire);
    std::stable_sort(by_price.begin(), by_price.end(), [](const Wire* a, const Wire* b) {
        return price_per_m(*a) < price_per_m(*b);
    });
    return by_price;
}

bool chooses_for_heat(const Installation& installation) {
    const auto& runs = installation.runs;
    if (!installation.store || runs.empty()) return false;
    const auto last = std::find_if(runs.rbegin(), runs.rend(), [](const WireRun& run) {
        return run.carries == Carried::bank || run.carries == Carried::branch;
    });
    return (last == runs.rend() ? runs.back() : *last).chooses();
}

void lay_for_heat(Circuit& circuit, const Parts& parts, const Installation& installation,
                  const Extremes& bright) {
    const RunParts* tail = circuit.run_at_element();
    if (tail == nullptr || !tail->run.chooses() || !circuit.heat) return;
    RunParts& laid = circuit.runs[static_cast<std::size_t>(tail - circuit.runs.data())];
    WireRun run = laid.run;
    if (run.surroundings.kind != SurroundingsKind::bed && !run.surroundings.air_c) {
        run.surroundings.air_c = careful_air_c;
    }
    const double around_c = run.surroundings.air_c.value_or(room_c);
    const Wire* best = nullptr;
    std::vector<ElementSeen> ends = ends_of(circuit, bright);
    RunParts trial;
    double most = 0.0;
    bool best_lossy = true;
    for (const Wire* wire : wires_by_price(parts)) {
        if (wire->voltage_rating_v.value_or(0.0) < circuit.cold_voltage_v()) continue;
        trial = parts_of_run(parts, run, *wire);
        // Insulation below the temperature of its surroundings is excluded without computing.
        if (trial.insulation && trial.insulation->limit_c <= around_c) continue;
        trial.brightest = trial.temperature(brightest_a(circuit, run, installation.site));
        set_conductor_temperature(trial);
        for (ElementSeen& end : ends) end.circuit.runs.assign(1, trial);
        const auto headroom = headroom_at_element(ends, installation);
        if (!headroom) continue;
        const bool lossy = is_lossy(trial, circuit);
        const bool better = lossy == best_lossy ? *headroom > most : !lossy;
        if (!better) continue;
        best = wire;
        most = *headroom;
        best_lossy = lossy;
        if (!lossy && most >= 1.0) break;
    }
    if (best == nullptr) return;
    laid = parts_of_run(parts, laid.run, *best);
    laid.brightest = laid.temperature(brightest_a(circuit, laid.run, installation.site));
    set_conductor_temperature(laid);
}

RunParts parts_of_run(const Parts& parts, const WireRun& run, const Wire& wire) {
    RunParts result{.run = run, .wire = wire};
    if (!wire.insulation.empty()) result.insulation = find_insulation(parts, wire.insulation);
    if (!run.connector.empty()) result.connector = find_connector(parts, run.connector);
    return result;
}

std::vector<RunParts> lay_runs(const Parts& parts, const Installation& installation,
                               const Circuit& array) {
    std::vector<RunParts> laid;
    std::vector<const Wire*> by_price;
    Circuit circuit{.panel = array.panel, .panels = array.panels, .unlike = array.unlike};
    // No margin of a run depends on the elements.
    circuit.bank.hookup = array.bank.hookup;
    circuit.bank.unlike = array.bank.unlike;
    for (const WireRun& run : installation.runs) circuit.runs.push_back({.run = run});
    for (std::size_t i = 0; i < installation.runs.size(); ++i) {
        const WireRun& run = installation.runs[i];
        if (run.chooses()) {
            if (by_price.empty()) {
                by_price = wires_by_price(parts);
                circuit.devices = place_devices(parts, installation);
            }
            laid.push_back(choose_wire(parts, installation, circuit, i, by_price));
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
