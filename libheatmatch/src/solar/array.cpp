#include "heatmatch/solar/array.hpp"

#include "sentences.hpp"

#include <string>

#include "heatmatch/base/error.hpp"

namespace heatmatch {

using solar_sentences::say;

Array Array::uniform(const SingleDiode& panel, int series, int parallel) {
    const auto check = [](int count, const char* field) {
        if (count >= 1) return;
        throw InvalidInput(ErrorDetail{.part = "array",
                                       .field = field,
                                       .value = std::to_string(count),
                                       .allowed = "at least 1",
                                       .remedy = say<"solar.one_panel">()});
    };
    check(series, "series");
    check(parallel, "parallel");
    return {.panel = panel, .series = series, .parallel = parallel};
}

ArrayCurve Array::at(double irradiance_w_m2, double cell_temperature_c) const {
    return {.panel = panel.at(irradiance_w_m2, cell_temperature_c),
            .series = series,
            .parallel = parallel};
}

double ArrayCurve::per_panel_ohm(double resistance_ohm) const {
    return resistance_ohm * parallel / series;
}

double ArrayCurve::current_a(double voltage_v) const {
    return panel.current_a(voltage_v / series) * parallel;
}

double ArrayCurve::voltage_v(double current_a) const {
    return panel.voltage_v(current_a / parallel) * series;
}

OperatingPoint ArrayCurve::into_resistance(double resistance_ohm) const {
    const OperatingPoint each = panel.into_resistance(per_panel_ohm(resistance_ohm));
    return {.voltage_v = each.voltage_v * series,
            .current_a = each.current_a * parallel,
            .power_w = each.power_w * series * parallel};
}

OperatingPoint ArrayCurve::maximum_power() const {
    const OperatingPoint each = panel.maximum_power();
    return {.voltage_v = each.voltage_v * series,
            .current_a = each.current_a * parallel,
            .power_w = each.power_w * series * parallel};
}

double ArrayCurve::open_circuit_voltage_v() const {
    return panel.open_circuit_voltage_v() * series;
}

double ArrayCurve::short_circuit_current_a() const {
    return panel.short_circuit_current_a() * parallel;
}

}  // namespace heatmatch
