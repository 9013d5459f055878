#include "heatmatch/solar/single_diode.hpp"

#include "diode_kernel.hpp"
#include "diode_root.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

#include <boost/math/tools/roots.hpp>

#include "heatmatch/base/units.hpp"

namespace heatmatch {

namespace {

constexpr double smallest_resistance_ohm = 1e-12;

}  // namespace

OperatingPoint DiodeCurve::into_resistance(double resistance_ohm) const {
    if (light_current_a <= 0.0) return {};
    if (std::isinf(resistance_ohm)) return {.voltage_v = open_circuit_voltage_v()};
    const double total = std::max(resistance_ohm + series_resistance_ohm, smallest_resistance_ohm);
    const double c = light_current_a + clamped_exp(ln_saturation_current);
    const double q = ideality_v * (shunt_conductance_s + 1.0 / total);
    const double current = ideality_v * solve_diode(c, q, ln_saturation_current) / total;
    const double voltage = current * resistance_ohm;
    return {.voltage_v = voltage, .current_a = current, .power_w = voltage * current};
}

double DiodeCurve::power_slope_w(double resistance_ohm) const {
    if (light_current_a <= 0.0) return 0.0;
    const double total = std::max(resistance_ohm + series_resistance_ohm, smallest_resistance_ohm);
    const OperatingPoint point = into_resistance(resistance_ohm);
    const double x = point.current_a * total;
    const double conductance =
        clamped_exp(ln_saturation_current + x / ideality_v) / ideality_v + shunt_conductance_s;
    return point.power_w * (1.0 - 2.0 * resistance_ohm * conductance / (1.0 + conductance * total));
}

double DiodeCurve::current_a(double voltage_v) const {
    if (light_current_a <= 0.0) return 0.0;
    const double i0 = clamped_exp(ln_saturation_current);
    double x = voltage_v;
    if (series_resistance_ohm > 0.0) {
        const double c = light_current_a + i0 + voltage_v / series_resistance_ohm;
        const double q = ideality_v * (shunt_conductance_s + 1.0 / series_resistance_ohm);
        x = ideality_v * solve_diode(c, q, ln_saturation_current);
    }
    return light_current_a + i0 - clamped_exp(ln_saturation_current + x / ideality_v) -
           shunt_conductance_s * x;
}

double DiodeCurve::voltage_v(double current_a) const {
    if (light_current_a <= 0.0) return 0.0;
    const double c = light_current_a + clamped_exp(ln_saturation_current) - current_a;
    const double q = ideality_v * shunt_conductance_s;
    if (c <= 0.0 && q <= 0.0) return -std::numeric_limits<double>::infinity();
    return ideality_v * solve_diode(c, q, ln_saturation_current) -
           current_a * series_resistance_ohm;
}

double DiodeCurve::open_circuit_voltage_v() const {
    return voltage_v(0.0);
}

double DiodeCurve::short_circuit_current_a() const {
    return into_resistance(0.0).current_a;
}

OperatingPoint DiodeCurve::maximum_power() const {
    if (light_current_a <= 0.0) return {};
    const double i0 = clamped_exp(ln_saturation_current);
    // With x = V + I Rs, g = -dI/dx: dP/dx = I (1 + 2 g Rs) - g x decreases through zero once.
    const auto slope = [&](double x) {
        const double e = clamped_exp(ln_saturation_current + x / ideality_v);
        const double g = e / ideality_v + shunt_conductance_s;
        const double current = light_current_a + i0 - e - shunt_conductance_s * x;
        return current * (1.0 + 2.0 * g * series_resistance_ohm) - g * x;
    };
    const double x_open = open_circuit_voltage_v();
    std::uintmax_t steps = 100;
    const auto [low, high] = boost::math::tools::toms748_solve(
        slope, 0.0, x_open, boost::math::tools::eps_tolerance<double>(52), steps);
    const double x = 0.5 * (low + high);
    const double current = light_current_a + i0 -
                           clamped_exp(ln_saturation_current + x / ideality_v) -
                           shunt_conductance_s * x;
    const double voltage = x - current * series_resistance_ohm;
    return {.voltage_v = voltage, .current_a = current, .power_w = voltage * current};
}

DiodeCurve SingleDiode::at(double irradiance_w_m2, double cell_temperature_c) const {
    constexpr double t0_k = stc_temperature_c + zero_celsius_k;
    const double t_k = cell_temperature_c + zero_celsius_k;
    const double dt = cell_temperature_c - stc_temperature_c;
    const double sun = std::max(irradiance_w_m2, 0.0) / stc_irradiance_w_m2;
    const double gap = band_gap_ev * (1.0 + band_gap_per_k * dt);
    return {.light_current_a = sun * (light_current_a + alpha_isc_a_per_k * dt),
            .ln_saturation_current = ln_saturation_current + 3.0 * std::log(t_k / t0_k) +
                                     band_gap_ev / (boltzmann_ev_per_k * t0_k) -
                                     gap / (boltzmann_ev_per_k * t_k),
            .series_resistance_ohm =
                series_resistance_ohm * std::max(0.1, 1.0 + series_resistance_per_k * dt),
            .shunt_conductance_s = shunt_conductance_s * sun,
            .ideality_v = modified_ideality_v * t_k / t0_k};
}

SingleDiode SingleDiode::scaled(double current_factor, double voltage_factor) const {
    SingleDiode result = *this;
    result.light_current_a *= current_factor;
    result.alpha_isc_a_per_k *= current_factor;
    result.ln_saturation_current += std::log(current_factor);
    result.modified_ideality_v *= voltage_factor;
    result.series_resistance_ohm *= voltage_factor / current_factor;
    result.shunt_conductance_s *= current_factor / voltage_factor;
    return result;
}

void maximum_powers(const DiodeCurves& curves, std::span<double> power_w, VectorWidth width) {
    std::vector<double> move(power_w.size());
    kernel::build_of(width).maximum_powers(
        {.light_current_a = curves.light_current_a.data(),
         .ln_saturation_current = curves.ln_saturation_current.data(),
         .series_resistance_ohm = curves.series_resistance_ohm.data(),
         .shunt_conductance_s = curves.shunt_conductance_s.data(),
         .ideality_v = curves.ideality_v.data(),
         .count = power_w.size()},
        power_w.data(), move.data());
    for (std::size_t i = 0; i < power_w.size(); ++i) {
        constexpr double settled = 1e-5;  // power is flat at its maximum: its error is the square
                                          // of this
        if (std::fabs(move[i]) < settled) continue;
        power_w[i] = DiodeCurve{.light_current_a = curves.light_current_a[i],
                                .ln_saturation_current = curves.ln_saturation_current[i],
                                .series_resistance_ohm = curves.series_resistance_ohm[i],
                                .shunt_conductance_s = curves.shunt_conductance_s[i],
                                .ideality_v = curves.ideality_v[i]}
                         .maximum_power()
                         .power_w;
    }
}

void operating_points(const DiodeCurves& curves, std::span<const double> resistance_ohm,
                      std::span<double> voltage_v, std::span<double> current_a, VectorWidth width) {
    kernel::build_of(width).operating_points(
        {.light_current_a = curves.light_current_a.data(),
         .ln_saturation_current = curves.ln_saturation_current.data(),
         .series_resistance_ohm = curves.series_resistance_ohm.data(),
         .shunt_conductance_s = curves.shunt_conductance_s.data(),
         .ideality_v = curves.ideality_v.data(),
         .count = resistance_ohm.size()},
        {.resistance_ohm = resistance_ohm.data(),
         .voltage_v = voltage_v.data(),
         .current_a = current_a.data()});
    for (std::size_t i = 0; i < resistance_ohm.size(); ++i) {
        if (!std::isinf(resistance_ohm[i])) continue;
        const DiodeCurve curve{.light_current_a = curves.light_current_a[i],
                               .ln_saturation_current = curves.ln_saturation_current[i],
                               .series_resistance_ohm = curves.series_resistance_ohm[i],
                               .shunt_conductance_s = curves.shunt_conductance_s[i],
                               .ideality_v = curves.ideality_v[i]};
        voltage_v[i] = curve.open_circuit_voltage_v();
        current_a[i] = 0.0;
    }
}

}  // namespace heatmatch
