#include "heatmatch/solar/string_curve.hpp"

#include "diode_root.hpp"
#include "falling_root.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace heatmatch {

namespace {

/// Voltage of a substring at a current, also in the dark and at reverse current [V, ohm].
StringCurve::Value substring_at(const DiodeCurve& curve, double current_a) {
    const double c = curve.light_current_a + clamped_exp(curve.ln_saturation_current) - current_a;
    const double q = curve.ideality_v * curve.shunt_conductance_s;
    if (c <= 0.0 && q <= 0.0) return {.voltage_v = -std::numeric_limits<double>::infinity()};
    const double z = solve_diode(c, q, curve.ln_saturation_current);
    const double e = clamped_exp(z + curve.ln_saturation_current);
    return {.voltage_v = curve.ideality_v * z - current_a * curve.series_resistance_ohm,
            .slope_ohm = -curve.ideality_v / (e + q) - curve.series_resistance_ohm,
            .scale_v = std::fabs(curve.ideality_v * z) +
                       std::fabs(current_a * curve.series_resistance_ohm)};
}

}  // namespace

double EqualSubstrings::current_a(double voltage_v) const {
    const double i0 = clamped_exp(curve.ln_saturation_current);
    double x = voltage_v;
    if (curve.series_resistance_ohm > 0.0) {
        const double c = curve.light_current_a + i0 + voltage_v / curve.series_resistance_ohm;
        const double q =
            curve.ideality_v * (curve.shunt_conductance_s + 1.0 / curve.series_resistance_ohm);
        x = curve.ideality_v * solve_diode(c, q, curve.ln_saturation_current);
    }
    return curve.light_current_a + i0 -
           clamped_exp(curve.ln_saturation_current + x / curve.ideality_v) -
           curve.shunt_conductance_s * x;
}

void StringCurve::add(const DiodeCurve& curve, const std::optional<double>& bypass_v) {
    for (EqualSubstrings& each : substrings) {
        if (each.curve == curve && each.bypass_v == bypass_v) {
            each.count += 1.0;
            return;
        }
    }
    substrings.push_back({.curve = curve, .count = 1.0, .bypass_v = bypass_v});
}

StringCurve::Value StringCurve::at_current(double current_a) const {
    Value sum;
    for (const EqualSubstrings& each : substrings) {
        const Value one = substring_at(each.curve, current_a);
        if (each.bypass_v && one.voltage_v < -*each.bypass_v) {
            sum.voltage_v -= each.count * *each.bypass_v;
            sum.scale_v += each.count * *each.bypass_v;
            continue;
        }
        sum.voltage_v += each.count * one.voltage_v;
        sum.slope_ohm += each.count * one.slope_ohm;
        sum.scale_v += each.count * one.scale_v;
    }
    return sum;
}

/// At the largest short-circuit current of its substrings no substring has a positive voltage.
double StringCurve::largest_current_a() const {
    double largest = 0.0;
    for (const EqualSubstrings& each : substrings) {
        largest = std::max(largest, each.current_a(0.0));
    }
    return largest;
}

double StringCurve::open_circuit_voltage_v() const {
    return std::max(0.0, at_current(0.0).voltage_v - blocking_v.value_or(0.0));
}

double StringCurve::current_a(double voltage_v) const {
    const double inside_v = voltage_v + blocking_v.value_or(0.0);
    const double open_v = at_current(0.0).voltage_v;
    const auto excess = [&](double current) {
        const Value at = at_current(current);
        return ValueAndSlope{at.voltage_v - inside_v, at.slope_ohm, at.scale_v + inside_v};
    };
    if (inside_v <= open_v) {
        const double most = largest_current_a();
        return falling_root(excess, 0.0, most, 0.9 * most);
    }
    if (blocking_v) return 0.0;
    double low = -std::max(largest_current_a(), 1e-3);
    while (excess(low).value < 0.0) low *= 2.0;
    return falling_root(excess, low, 0.0, 0.5 * low);
}

double StringCurve::current_into(double resistance_ohm) const {
    const double drop_v = blocking_v.value_or(0.0);
    if (at_current(0.0).voltage_v <= drop_v) return 0.0;
    const auto excess = [&](double current) {
        const Value at = at_current(current);
        return ValueAndSlope{at.voltage_v - drop_v - current * resistance_ohm,
                             at.slope_ohm - resistance_ohm,
                             at.scale_v + drop_v + current * resistance_ohm};
    };
    const double most = largest_current_a();
    return falling_root(excess, 0.0, most, 0.9 * most);
}

std::vector<double> StringCurve::kinks_v() const {
    std::vector<double> found;
    const double drop_v = blocking_v.value_or(0.0);
    const auto add = [&](double voltage_v) {
        if (voltage_v > 0.0) found.push_back(voltage_v);
    };
    for (const EqualSubstrings& each : substrings) {
        if (!each.bypass_v) continue;
        add(at_current(each.current_a(-*each.bypass_v)).voltage_v - drop_v);
    }
    if (blocking_v) add(open_circuit_voltage_v());
    std::sort(found.begin(), found.end());
    return found;
}

}  // namespace heatmatch
