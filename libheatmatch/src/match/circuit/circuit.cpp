#include "heatmatch/match/circuit/circuit.hpp"

#include <algorithm>
#include <array>

#include "heatmatch/base/units.hpp"
#include "heatmatch/solar/mixed_energy.hpp"

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

int Circuit::panel_count() const {
    return unlike ? unlike->panel_count() : panels.count();
}

std::vector<const PanelInService*> Circuit::kinds_of_panels() const {
    if (!unlike) return {&panel};
    std::vector<const PanelInService*> kinds;
    for (const GroupInArray& group : unlike->groups) kinds.push_back(&group.panel);
    return kinds;
}

std::string Circuit::array_title() const {
    return unlike ? unlike->layout.text() : owned.group + ' ' + panels.label();
}

std::string Circuit::array_subject() const {
    return unlike ? "array \"" + unlike->layout.text() + '"' : "group \"" + owned.group + '"';
}

double Circuit::current_share(const WireRun& run) const {
    if (run.carries == Carried::string) {
        return unlike ? string_current_a() / short_circuit_current_a() : 1.0 / panels.parallel;
    }
    if (run.carries == Carried::branch) return bank.branch_share();
    return 1.0;
}

double Circuit::wire_share(const WireRun& run) const {
    if (run.carries == Carried::branch) return bank.branch_wire_share();
    if (!unlike || run.carries != Carried::string) return current_share(run);
    // Each string has its own run; its loss goes with the square of its share of the current.
    const double total_a = short_circuit_current_a();
    double share = 0.0;
    for (std::size_t s = 0; s < unlike->strings.size(); ++s) {
        const double of_string = unlike->short_circuit_current_a(s) / total_a;
        share += of_string * of_string;
    }
    return share;
}

double Circuit::wire_ohm() const {
    // Each equal string and branch has its own run: in parallel they count as a share of one.
    double ohm = 0.0;
    for (const RunParts& parts : runs) ohm += parts.loop_ohm() * wire_share(parts.run);
    return ohm;
}

double Circuit::wire_ohm_at(double celsius) const {
    double ohm = 0.0;
    for (const RunParts& parts : runs) {
        ohm += parts.loop_ohm_at(celsius) * wire_share(parts.run);
    }
    return ohm;
}

double Circuit::branch_ohm_at(double celsius) const {
    double ohm = 0.0;
    for (const RunParts& parts : runs) {
        if (parts.run.carries == Carried::branch) ohm += parts.loop_ohm_at(celsius);
    }
    return ohm;
}

double Circuit::label_vmp_v() const {
    if (!unlike) return panel.panel.v_mp.value_or(0.0) * panels.series;
    double least = unlike->label_vmp_v(0);
    for (std::size_t s = 1; s < unlike->strings.size(); ++s) {
        least = std::min(least, unlike->label_vmp_v(s));
    }
    return least;
}

double Circuit::label_match_ohm() const {
    if (!unlike) return *panel.panel.v_mp / *panel.panel.i_mp * panels.resistance_factor();
    return stc_match_ohm(unlike->array(PanelState::today));
}

double Circuit::cold_voltage_v() const {
    if (!unlike) return panel.cold.v_oc * panels.series;
    double most = 0.0;
    for (std::size_t s = 0; s < unlike->strings.size(); ++s) {
        most = std::max(most, unlike->cold_voltage_v(s));
    }
    return most;
}

double Circuit::short_circuit_current_a() const {
    if (!unlike) return panel.bright_isc_a() * panels.parallel;
    double sum = 0.0;
    for (std::size_t s = 0; s < unlike->strings.size(); ++s) {
        sum += unlike->short_circuit_current_a(s);
    }
    return sum;
}

double Circuit::string_current_a() const {
    if (!unlike) return panel.bright_isc_a();
    double most = 0.0;
    for (std::size_t s = 0; s < unlike->strings.size(); ++s) {
        most = std::max(most, unlike->short_circuit_current_a(s));
    }
    return most;
}

double Circuit::fed_current_a(std::size_t string) const {
    if (!unlike) return (panels.parallel - 1) * panel.bright_isc_a();
    if (unlike->strings.size() == 1) return 0.0;
    return short_circuit_current_a() - unlike->short_circuit_current_a(string);
}

double Circuit::fed_current_a() const {
    double most = fed_current_a(0);
    for (std::size_t s = 1; unlike && s < unlike->strings.size(); ++s) {
        most = std::max(most, fed_current_a(s));
    }
    return most;
}

double Circuit::surely_fed_a() const {
    if (!unlike) return (panels.parallel - 1) * panel.i_sc_limit_a;
    double sum = 0.0;
    double most = 0.0;
    for (std::size_t s = 0; s < unlike->strings.size(); ++s) {
        sum += unlike->least_current_a(s);
        most = std::max(most, unlike->least_current_a(s));
    }
    return sum - most;
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
    return array_title() + " into " + bank.title();
}

double Delivered::harvest_fraction() const {
    return maximum_power_w > 0.0 ? power_w / maximum_power_w : 0.0;
}

double bank_ohm_of_most_power(const ArrayCurve& curve, double wire_ohm) {
    // At the bank the wire acts as series resistance of the panels.
    ArrayCurve with_wire = curve;
    with_wire.panel.series_resistance_ohm += curve.per_panel_ohm(wire_ohm);
    const OperatingPoint best = with_wire.maximum_power();
    if (best.current_a <= 0.0) return 0.0;
    return best.voltage_v / best.current_a;
}

namespace {

/// The curve of a circuit's array, its equal panels or its unlike ones.
struct OnArray {
    const Circuit& circuit;
    double irradiance_w_m2 = 0.0;
    double cell_temperature_c = 0.0;

    template <class Use>
    auto operator()(PanelState state, const Use& use) const {
        if (circuit.unlike) {
            return use(circuit.unlike->curve(state, irradiance_w_m2, cell_temperature_c));
        }
        return use(Array{.panel = panel_as(circuit.panel, state),
                         .series = circuit.panels.series,
                         .parallel = circuit.panels.parallel,
                         .drop_v = circuit.panel.blocking_v()}
                       .at(irradiance_w_m2, cell_temperature_c));
    }
};

/// Bank resistances that absorb the most power from each part of a curve [ohm].
std::vector<double> best_bank_ohms(const ArrayCurve& curve, double wire_ohm) {
    return {bank_ohm_of_most_power(curve, wire_ohm)};
}

std::vector<double> best_bank_ohms(const MixedArrayCurve& curve, double wire_ohm) {
    std::vector<double> ohms;
    for (const OperatingPoint& best : curve.power_maxima()) {
        if (best.current_a > 0.0) ohms.push_back(best.voltage_v / best.current_a - wire_ohm);
    }
    return ohms;
}

}  // namespace

Delivered deliver(const Circuit& circuit, double irradiance_w_m2, double cell_temperature_c) {
    const double wire = circuit.wire_ohm();
    const double ohm = circuit.bank.typical_ohm();
    const OnArray on_array{circuit, irradiance_w_m2, cell_temperature_c};
    Delivered delivered = on_array(PanelState::today, [&](const auto& curve) {
        const OperatingPoint point = curve.into_resistance(ohm + wire);
        return Delivered{.irradiance_w_m2 = irradiance_w_m2,
                         .cell_temperature_c = cell_temperature_c,
                         .power_w = point.current_a * point.current_a * ohm,
                         .voltage_v = point.current_a * ohm,
                         .current_a = point.current_a,
                         .wire_w = point.current_a * point.current_a * wire,
                         .maximum_power_w = curve.maximum_power().power_w};
    });
    delivered.power_low_w = delivered.power_w;
    delivered.power_high_w = delivered.power_w;
    const auto keep = [&](const auto& curve) {
        const auto power_into = [&](double bank_ohm) {
            return curve.into_resistance(bank_ohm + wire).power_w * bank_ohm / (bank_ohm + wire);
        };
        for (double end : {circuit.bank.low_ohm(), ohm, circuit.bank.high_ohm()}) {
            const double power = power_into(end);
            delivered.power_low_w = std::min(delivered.power_low_w, power);
            delivered.power_high_w = std::max(delivered.power_high_w, power);
        }
        // If the band of resistance includes a best one, its maximum lies inside the band.
        for (const double best : best_bank_ohms(curve, wire)) {
            if (best > circuit.bank.low_ohm() && best < circuit.bank.high_ohm()) {
                delivered.power_high_w = std::max(delivered.power_high_w, power_into(best));
            }
        }
        return true;
    };
    on_array(PanelState::weak, keep);
    on_array(PanelState::strong, keep);
    return delivered;
}

}  // namespace heatmatch
