#include "heatmatch/match/circuit/circuit.hpp"

#include <algorithm>
#include <array>

#include "heatmatch/base/units.hpp"

namespace heatmatch {

double RunParts::loop_ohm_at(double celsius) const {
    const double joints = run.joint_ohm.value_or(0.0);
    if (!wire) return joints;
    return 2.0 * run.length_m * resistance_ohm_per_m(*wire, celsius) + joints;
}

std::optional<ConductorTemperature> RunParts::temperature(double current_a) const {
    if (brightest) return brightest;
    if (!wire) return std::nullopt;
    return conductor_temperature(*wire, insulation ? &*insulation : nullptr, current_a,
                                 run.surroundings);
}

double Circuit::current_share(const WireRun& run) const {
    if (run.carries == Carried::string) return 1.0 / panels.parallel;
    if (run.carries == Carried::branch) return 1.0 / bank.hookup.parallel;
    return 1.0;
}

double Circuit::wire_ohm() const {
    // Each equal string and branch has its own run: in parallel they count as a share of one.
    double ohm = 0.0;
    for (const RunParts& parts : runs) ohm += parts.loop_ohm() * current_share(parts.run);
    return ohm;
}

double Circuit::wire_ohm_at(double celsius) const {
    double ohm = 0.0;
    for (const RunParts& parts : runs) {
        ohm += parts.loop_ohm_at(celsius) * current_share(parts.run);
    }
    return ohm;
}

double Circuit::cold_voltage_v() const {
    return panel.cold.v_oc * panels.series;
}

double Circuit::short_circuit_current_a() const {
    return panel.bright_isc_a() * panels.parallel;
}

const RunParts* Circuit::run_at_element() const {
    const RunParts* last = nullptr;
    for (const RunParts& parts : runs) {
        if (parts.run.carries == Carried::bank || parts.run.carries == Carried::branch)
            last = &parts;
    }
    return last == nullptr && !runs.empty() ? &runs.back() : last;
}

std::string Circuit::title() const {
    return owned.group + ' ' + panels.label() + " into " + bank.element.id + ' ' +
           bank.hookup.label();
}

double Delivered::harvest_fraction() const {
    return maximum_power_w > 0.0 ? power_w / maximum_power_w : 0.0;
}

double bank_ohm_of_most_power(const ArrayCurve& curve, double wire_ohm) {
    // At the bank the wire acts as series resistance of the panels.
    DiodeCurve with_wire = curve.panel;
    with_wire.series_resistance_ohm += curve.per_panel_ohm(wire_ohm);
    const OperatingPoint best = with_wire.maximum_power();
    if (best.current_a <= 0.0) return 0.0;
    return best.voltage_v / best.current_a * curve.series / curve.parallel;
}

Delivered deliver(const Circuit& circuit, double irradiance_w_m2, double cell_temperature_c) {
    const double wire = circuit.wire_ohm();
    const auto curve_of = [&](double current_factor) {
        const SingleDiode diode =
            circuit.panel.today.scaled(current_factor / circuit.panel.current_factor, 1.0);
        return Array{
            .panel = diode, .series = circuit.panels.series, .parallel = circuit.panels.parallel}
            .at(irradiance_w_m2, cell_temperature_c);
    };
    const auto power_into = [wire](const ArrayCurve& curve, double bank_ohm) {
        return curve.into_resistance(bank_ohm + wire).power_w * bank_ohm / (bank_ohm + wire);
    };
    const ArrayCurve typical = curve_of(circuit.panel.current_factor);
    const double ohm = circuit.bank.typical_ohm();
    const OperatingPoint point = typical.into_resistance(ohm + wire);
    Delivered delivered{.irradiance_w_m2 = irradiance_w_m2,
                        .cell_temperature_c = cell_temperature_c,
                        .power_w = point.current_a * point.current_a * ohm,
                        .voltage_v = point.current_a * ohm,
                        .current_a = point.current_a,
                        .wire_w = point.current_a * point.current_a * wire,
                        .maximum_power_w = typical.maximum_power().power_w};
    delivered.power_low_w = delivered.power_w;
    delivered.power_high_w = delivered.power_w;
    for (double factor : {circuit.panel.current_factor_low, circuit.panel.current_factor_high}) {
        const ArrayCurve curve = curve_of(factor);
        for (double end : {circuit.bank.low_ohm(), ohm, circuit.bank.high_ohm()}) {
            const double power = power_into(curve, end);
            delivered.power_low_w = std::min(delivered.power_low_w, power);
            delivered.power_high_w = std::max(delivered.power_high_w, power);
        }
        // If the band of resistance includes the best one, the maximum lies inside the band.
        const double best = bank_ohm_of_most_power(curve, wire);
        if (best > circuit.bank.low_ohm() && best < circuit.bank.high_ohm()) {
            delivered.power_high_w = std::max(delivered.power_high_w, power_into(curve, best));
        }
    }
    return delivered;
}

}  // namespace heatmatch
