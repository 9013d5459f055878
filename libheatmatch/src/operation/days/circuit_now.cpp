#include "circuit_now.hpp"

namespace heatmatch {

namespace {

double factor_of(const Bank& bank, double coil_c) {
    return resistance_factor(bank.alloy ? &*bank.alloy : nullptr, coil_c).typical;
}

}  // namespace

CircuitNow::CircuitNow(const Circuit& circuit)
    : circuit_(&circuit),
      array_{.panel = circuit.panel.today,
             .series = circuit.panels.series,
             .parallel = circuit.panels.parallel},
      factor_as_made_(factor_of(circuit.bank, circuit.bank.coil_temperature_c)),
      bank_ohm_(circuit.bank.typical_ohm()),
      wire_ohm_(circuit.wire_ohm()),
      runs_(circuit.runs) {}

void CircuitNow::set_sun(double irradiance_w_m2, double cell_temperature_c) {
    dark_ = irradiance_w_m2 <= 0.0;
    if (dark_) {
        maximum_power_w_ = 0.0;
        return;
    }
    curve_ = array_.at(irradiance_w_m2, cell_temperature_c);
    maximum_power_w_ = curve_.maximum_power().power_w;
}

void CircuitNow::set_coil_c(double coil_c) {
    bank_ohm_ = circuit_->bank.typical_ohm() * factor_of(circuit_->bank, coil_c) / factor_as_made_;
}

void CircuitNow::set_wire_current(double current_a) {
    wire_ohm_ = 0.0;
    for (RunParts& parts : runs_) {
        const double share = circuit_->current_share(parts.run);
        if (parts.wire) {
            const auto now =
                conductor_temperature(*parts.wire, parts.insulation ? &*parts.insulation : nullptr,
                                      current_a * share, parts.run.surroundings);
            if (now && !now->runaway) parts.conductor_c = now->conductor_c;
        }
        wire_ohm_ += parts.loop_ohm() * share;
    }
}

Flow CircuitNow::flow() const {
    if (dark_) return {};
    const double current_a = curve_.into_resistance(bank_ohm_ + wire_ohm_).current_a;
    return {.voltage_v = current_a * bank_ohm_,
            .current_a = current_a,
            .power_w = current_a * current_a * bank_ohm_,
            .wire_w = current_a * current_a * wire_ohm_};
}

}  // namespace heatmatch
