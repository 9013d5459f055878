#include "heatmatch/operation/days/store_switch.hpp"

#include "sentences.hpp"

#include <algorithm>

#include "heatmatch/base/units.hpp"

namespace heatmatch {

using days_sentences::say;

namespace {

constexpr double usual_differential_k = 10.0;  // from memory

bool senses(const Control& control) {
    return control.sense_high_c.has_value();
}

/// Opens by itself once commanded: a contactor, a relay, or the sensing control.
const PlacedDevice* breaker_for(const Circuit& circuit, const PlacedDevice& sensing) {
    if (sensing.device.duty == Duty::breaks_dc) return &sensing;
    for (const PlacedDevice& placed : circuit.devices) {
        if (placed.device.duty == Duty::breaks_dc && placed.control.reset == ResetKind::automatic &&
            !senses(placed.control)) {
            return &placed;
        }
    }
    return nullptr;
}

bool holds(const Circuit& circuit, const PlacedDevice& breaker) {
    if (breaker.control.ac_only.value_or(false)) return false;
    const auto run = std::find_if(
        circuit.runs.begin(), circuit.runs.end(),
        [&breaker](const RunParts& parts) { return parts.run.name == breaker.device.run; });
    const double share = run == circuit.runs.end() ? 1.0 : circuit.current_share(run->run);
    const auto may_a =
        breaking_current_a(breaker.control, circuit.cold_voltage_v(), breaker.device.poles_used);
    return may_a && *may_a >= circuit.short_circuit_current_a() * share;
}

}  // namespace

std::vector<StoreSwitch> store_switches(const Circuit& circuit, Sentences& remarks) {
    std::vector<StoreSwitch> switches;
    for (const PlacedDevice& placed : circuit.devices) {
        const Control& control = placed.control;
        if (!senses(control)) continue;
        if (!placed.device.set_c) {
            remarks.push_back(say<"days.not_set">(with<"control">(control.id)));
            continue;
        }
        const PlacedDevice* breaker = breaker_for(circuit, placed);
        if (breaker == nullptr) {
            remarks.push_back(say<"days.commands_nothing">(with<"control">(control.id)));
            continue;
        }
        StoreSwitch made{.device = control.id,
                         .senses = placed.device.senses.value_or(SensedPlace::wall),
                         .opens_c = *placed.device.set_c,
                         .resets = control.reset == ResetKind::automatic,
                         .breaks = breaker->control.id,
                         .can_break = holds(circuit, *breaker)};
        made.closes_c = made.opens_c - control.differential_k.value_or(usual_differential_k);
        if (!made.can_break) {
            remarks.push_back(say<"days.welded">(
                with<"breaker">(made.breaks), with<"volts">(circuit.cold_voltage_v(), unit::volt),
                with<"amperes">(circuit.short_circuit_current_a(), unit::ampere)));
        }
        switches.push_back(std::move(made));
    }
    return switches;
}

}  // namespace heatmatch
