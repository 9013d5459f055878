#include "heatmatch/match/limits.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/heat/wire_temperature.hpp"

namespace heatmatch {

namespace {

/// Headroom of a quantity that rests at `rest`, as grade() has it.
double headroom_of(double value, double limit, double rest = 0.0) {
    return (limit - value) / (limit - rest);
}

void keep_worse(Screened& screened, double headroom, const std::string& reason) {
    if (headroom >= screened.headroom) return;
    screened.headroom = headroom;
    screened.reason = reason;
}

}  // namespace

ArrayCurve bright_curve(const PanelInService& panel, Hookup panels, const Site& site) {
    const SingleDiode as_new = panel.as_new.scaled(panel.i_sc_limit_a / panel.panel.i_sc, 1.0);
    return Array{.panel = as_new, .series = panels.series, .parallel = panels.parallel}.at(
        site.bright_irradiance_w_m2, site.record_low_c + bright_cold_rise_k);
}

Extremes extremes(const ArrayCurve& bright, const Bank& bank, double wire_ohm) {
    Extremes result;
    for (const double bank_ohm : {bank.low_ohm(), bank.typical_ohm(), bank.high_ohm()}) {
        const double each_ohm = bank_ohm / bank.hookup.resistance_factor();
        const double current = bright.into_resistance(bank_ohm + wire_ohm).current_a;
        const double element_current = current / bank.hookup.parallel;
        result.current_a = std::max(result.current_a, current);
        result.element_power_w =
            std::max(result.element_power_w, element_current * element_current * each_ohm);
        result.element_voltage_v = std::max(result.element_voltage_v, element_current * each_ohm);
        if (bank.hookup.parallel > 1) {
            const double left = bank.with_one_branch_open(bank_ohm);
            const double survivor =
                bright.into_resistance(left + wire_ohm).current_a / (bank.hookup.parallel - 1);
            result.survivor_power_w =
                std::max(result.survivor_power_w, survivor * survivor * each_ohm);
        }
    }
    return result;
}

BankLimits bank_limits(const Element& element) {
    BankLimits limits{.element_power_w = element.rated_w, .terminal_c = element.terminal_limit_c};
    if (element.rated_v) limits.sheath_voltage_v = std::sqrt(2.0) * *element.rated_v;
    return limits;
}

Screened screen_bank(const Extremes& extremes, const BankLimits& limits, double cold_voltage_v,
                     const std::optional<TerminalTemperature>& terminal) {
    Screened screened;
    if (limits.element_power_w) {
        keep_worse(screened, headroom_of(extremes.element_power_w, *limits.element_power_w),
                   "element power");
    }
    if (limits.sheath_voltage_v) {
        keep_worse(screened, headroom_of(cold_voltage_v, *limits.sheath_voltage_v),
                   "sheath voltage");
    }
    if (limits.terminal_c && terminal) {
        keep_worse(screened,
                   headroom_of(terminal->conductor_c, *limits.terminal_c, terminal->air_c),
                   "terminal temperature");
    }
    return screened;
}

Screened screen_margins(const std::vector<Margin>& margins) {
    Screened screened;
    for (const Margin& margin : margins) {
        if (margin.consequence != Severity::danger || !margin.headroom) continue;
        keep_worse(screened, *margin.headroom, margin.name);
    }
    return screened;
}

std::optional<TerminalTemperature> terminal_temperature(const Circuit& circuit, const Site& site) {
    std::optional<TerminalTemperature> hottest;
    const double current =
        circuit.short_circuit_current_a() * site.bright_irradiance_w_m2 / stc_irradiance_w_m2;
    for (const RunParts& parts : circuit.runs) {
        const bool at_element = parts.run.carries == "bank" || parts.run.carries == "branch";
        if (!at_element || !parts.wire) continue;
        const Insulation* insulation = parts.insulation ? &*parts.insulation : nullptr;
        const auto found = conductor_temperature(*parts.wire, insulation,
                                                 current * circuit.current_share(parts.run),
                                                 parts.run.surroundings);
        if (!found || (hottest && found->conductor_c <= hottest->conductor_c)) continue;
        hottest = {.air_c = *parts.run.surroundings.air_c, .conductor_c = found->conductor_c};
    }
    return hottest;
}

}  // namespace heatmatch
