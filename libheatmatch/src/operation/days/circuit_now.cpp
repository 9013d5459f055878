#include "circuit_now.hpp"

#include "heatmatch/match/circuit/unlike_bank.hpp"
#include "heatmatch/solar/cell_temperature.hpp"

namespace heatmatch {

namespace {

double factor_of(const Bank& bank, double coil_c) {
    return resistance_factor(bank.alloy ? &*bank.alloy : nullptr, coil_c).typical;
}

double noct_c(const PanelInService& panel) {
    return panel.panel.noct_c.value_or(usual_noct_c);
}

}  // namespace

CircuitNow::CircuitNow(const Circuit& circuit)
    : circuit_(&circuit),
      array_{.panel = circuit.panel.today,
             .series = circuit.panels.series,
             .parallel = circuit.panels.parallel,
             .drop_v = circuit.panel.blocking_v()},
      bank_ohm_(circuit.bank.typical_ohm()),
      wire_ohm_(circuit.wire_ohm()),
      runs_(circuit.runs) {
    if (circuit.unlike) unlike_ = circuit.unlike->array(PanelState::today);
    const Bank& bank = circuit.bank;
    if (!bank.unlike) {
        factors_as_made_ = {factor_of(bank, bank.coil_temperature_c)};
        return;
    }
    for (const Bank& element : bank.unlike->elements) {
        factors_as_made_.push_back(factor_of(element, element.coil_temperature_c));
    }
    unlike_ohm_ = bank.unlike->ohms(&ElementResistance::typical_ohm);
}

void CircuitNow::set_sun(const DayWeather& weather, std::size_t row) {
    if (unlike_) return set_unlike_sun(weather, row);
    const double rear = circuit_->panel.rear.typical;
    const double sun_w_m2 = weather.sun_w_m2(row, rear);
    dark_ = sun_w_m2 <= 0.0;
    if (dark_) {
        maximum_power_w_ = 0.0;
        return;
    }
    curve_ = array_.at(sun_w_m2, weather.cell_temperature_c(row, noct_c(circuit_->panel), rear));
    maximum_power_w_ = curve_.maximum_power().power_w;
}

void CircuitNow::set_unlike_sun(const DayWeather& weather, std::size_t row) {
    const UnlikeArray& array = *circuit_->unlike;
    std::vector<PanelConditions> conditions;
    dark_ = true;
    for (const auto& string : array.strings) {
        for (const std::size_t group : string) {
            const PanelInService& panel = array.panel(group);
            const DayWeather& here = weather.of_group(group);
            const double rear = panel.rear.typical;
            const double sun_w_m2 = here.sun_w_m2(row, rear);
            dark_ &= sun_w_m2 <= 0.0;
            conditions.push_back(
                {.irradiance_w_m2 = sun_w_m2,
                 .cell_temperature_c = here.cell_temperature_c(row, noct_c(panel), rear)});
        }
    }
    maximum_power_w_ = 0.0;
    if (dark_) return;
    unlike_curve_ = unlike_->at(conditions);
    maximum_power_w_ = unlike_curve_->maximum_power().power_w;
}

void CircuitNow::set_coils_c(std::span<const double> coil_c) {
    const Bank& bank = circuit_->bank;
    if (!bank.unlike) {
        bank_ohm_ = bank.typical_ohm() * factor_of(bank, coil_c.front()) / factors_as_made_.front();
        return;
    }
    for (std::size_t i = 0; i < unlike_ohm_.size(); ++i) {
        const Bank& element = bank.unlike->elements[i];
        unlike_ohm_[i] =
            element.each.typical_ohm * factor_of(element, coil_c[i]) / factors_as_made_[i];
    }
    bank_ohm_ = bank.unlike->tree.resistance_ohm(unlike_ohm_);
}

std::vector<OperatingPoint> CircuitNow::elements_at(const Flow& flow) const {
    if (circuit_->bank.unlike) {
        return circuit_->bank.unlike->tree.at_voltage(unlike_ohm_, flow.voltage_v);
    }
    return {{.voltage_v = flow.voltage_v, .current_a = flow.current_a, .power_w = flow.power_w}};
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
        wire_ohm_ += parts.loop_ohm() * circuit_->wire_share(parts.run);
    }
}

Flow CircuitNow::flow() const {
    if (dark_) return {};
    const double load_ohm = bank_ohm_ + wire_ohm_;
    const double current_a = unlike_ ? unlike_curve_->into_resistance(load_ohm).current_a
                                     : curve_.into_resistance(load_ohm).current_a;
    return {.voltage_v = current_a * bank_ohm_,
            .current_a = current_a,
            .power_w = current_a * current_a * bank_ohm_,
            .wire_w = current_a * current_a * wire_ohm_};
}

}  // namespace heatmatch
