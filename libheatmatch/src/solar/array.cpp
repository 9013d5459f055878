#include "heatmatch/solar/array.hpp"

#include "sentences.hpp"

#include <algorithm>
#include <cstdint>
#include <string>

#include <boost/math/tools/minima.hpp>
#include <boost/math/tools/roots.hpp>

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
            .parallel = parallel,
            .drop_v = drop_v};
}

double ArrayCurve::per_panel_ohm(double resistance_ohm) const {
    return resistance_ohm * parallel / series;
}

double ArrayCurve::current_a(double voltage_v) const {
    const double forward_a = panel.current_a((voltage_v + drop_v) / series) * parallel;
    return drop_v > 0.0 ? std::max(0.0, forward_a) : forward_a;
}

double ArrayCurve::voltage_v(double current_a) const {
    return panel.voltage_v(current_a / parallel) * series - drop_v;
}

namespace {

/// The point of one panel that loses `drop_v` before its load: `v - drop = i R`, bracketed.
OperatingPoint behind_drop(const DiodeCurve& panel, double drop_v, double load_ohm) {
    const double open_v = panel.open_circuit_voltage_v();
    if (open_v <= drop_v) return {};
    const auto surplus_v = [&](double voltage_v) {
        return voltage_v - drop_v - panel.current_a(voltage_v) * load_ohm;
    };
    std::uintmax_t steps = 100;
    const double voltage_v =
        surplus_v(drop_v) >= 0.0
            ? drop_v
            : boost::math::tools::toms748_solve(
                  surplus_v, drop_v, open_v, boost::math::tools::eps_tolerance<double>(50), steps)
                  .first;
    const double current_a = std::max(0.0, panel.current_a(voltage_v));
    return {.voltage_v = voltage_v - drop_v,
            .current_a = current_a,
            .power_w = (voltage_v - drop_v) * current_a};
}

/// The point of most power behind that drop; that power has one maximum.
OperatingPoint most_behind_drop(const DiodeCurve& panel, double drop_v) {
    const double open_v = panel.open_circuit_voltage_v();
    if (open_v <= drop_v) return {};
    const auto less_w = [&](double voltage_v) {
        return -(voltage_v - drop_v) * panel.current_a(voltage_v);
    };
    constexpr int bits = 26;  // half of a double: the power is exact to all of them
    const auto [voltage_v, lost_w] =
        boost::math::tools::brent_find_minima(less_w, drop_v, open_v, bits);
    return {.voltage_v = voltage_v - drop_v,
            .current_a = panel.current_a(voltage_v),
            .power_w = -lost_w};
}

OperatingPoint scaled_point(const OperatingPoint& each, int series, int parallel) {
    return {.voltage_v = each.voltage_v * series,
            .current_a = each.current_a * parallel,
            .power_w = each.power_w * series * parallel};
}

}  // namespace

OperatingPoint ArrayCurve::into_resistance(double resistance_ohm) const {
    if (drop_v > 0.0) {
        return scaled_point(behind_drop(panel, drop_v / series, per_panel_ohm(resistance_ohm)),
                            series, parallel);
    }
    return scaled_point(panel.into_resistance(per_panel_ohm(resistance_ohm)), series, parallel);
}

OperatingPoint ArrayCurve::maximum_power() const {
    return scaled_point(
        drop_v > 0.0 ? most_behind_drop(panel, drop_v / series) : panel.maximum_power(), series,
        parallel);
}

double ArrayCurve::open_circuit_voltage_v() const {
    return std::max(0.0, panel.open_circuit_voltage_v() * series - drop_v);
}

double ArrayCurve::short_circuit_current_a() const {
    if (drop_v > 0.0) return current_a(0.0);
    return panel.short_circuit_current_a() * parallel;
}

}  // namespace heatmatch
