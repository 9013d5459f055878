#pragma once

// Included once by each build of the kernel; everything here is local to that build.

#include "diode_kernel.hpp"

#include <cstdint>

namespace heatmatch::kernel {
namespace {

constexpr double largest_exponent = 700.0;
constexpr double smallest_resistance_ohm = 1e-12;
constexpr double log2_e = 1.4426950408889634;
constexpr double ln_2_high = 6.93147180369123816490e-01;  // its last 32 bits are 0: n ln 2 is exact
constexpr double ln_2_low = 1.90821492927058770002e-10;
constexpr double to_integer = 6755399441055744.0;  // 1.5 x 2^52: adding it rounds to an integer

inline std::uint64_t bits(double x) {
    return __builtin_bit_cast(std::uint64_t, x);
}

inline double from_bits(std::uint64_t x) {
    return __builtin_bit_cast(double, x);
}

/// e^x for |x| <= 700, relative error below 4e-16: 2^n times the series of e^r, |r| <= ln(2)/2.
inline double exponential(double x) {
    x = x > largest_exponent ? largest_exponent : x;
    x = x < -largest_exponent ? -largest_exponent : x;
    const double shifted = x * log2_e + to_integer;
    const double n = shifted - to_integer;
    const double r = (x - n * ln_2_high) - n * ln_2_low;
    double p = 1.0 / 479001600.0;
    p = p * r + 1.0 / 39916800.0;
    p = p * r + 1.0 / 3628800.0;
    p = p * r + 1.0 / 362880.0;
    p = p * r + 1.0 / 40320.0;
    p = p * r + 1.0 / 5040.0;
    p = p * r + 1.0 / 720.0;
    p = p * r + 1.0 / 120.0;
    p = p * r + 1.0 / 24.0;
    p = p * r + 1.0 / 6.0;
    p = p * r + 0.5;
    p = p * r + 1.0;
    p = p * r + 1.0;
    return from_bits(bits(p) + (bits(shifted) << 52));
}

/// ln x for normal x > 0, to 1e-8: a start value needs no more.
inline double rough_logarithm(double x) {
    constexpr std::uint64_t exponent_of_2_to_52 = 0x4330000000000000;
    constexpr double two_to_52 = 4503599627370496.0;
    const std::uint64_t above = bits(x) >> 52;
    const double exponent = from_bits(above | exponent_of_2_to_52) - two_to_52 - 1023.0;
    const double m = from_bits((bits(x) & 0x000fffffffffffff) | 0x3ff0000000000000);
    const double s = (m - 1.0) / (m + 1.0);
    const double s2 = s * s;
    double p = 1.0 / 15.0;
    p = p * s2 + 1.0 / 13.0;
    p = p * s2 + 1.0 / 11.0;
    p = p * s2 + 1.0 / 9.0;
    p = p * s2 + 1.0 / 7.0;
    p = p * s2 + 1.0 / 5.0;
    p = p * s2 + 1.0 / 3.0;
    p = p * s2 + 1.0;
    return exponent * 0.69314718055994531 + 2.0 * s * p;
}

/// Steps of fourth order for `exp(z + ln_i0) + q z = c`, as DiodeCurve::into_resistance. Three give
/// 1e-15; two give 2e-5 in z at worst and 3e-8 in a year's energy.
template <int steps>
inline double solve(double c, double q, double ln_i0, double ln_ratio) {
    double z = c / q;
    z = z < ln_ratio ? z : ln_ratio;
    for (int step = 0; step < steps; ++step) {
        const double e = exponential(z + ln_i0);
        const double f1 = e + q;
        const double f = e + q * z - c;
        const double fe = f * e;
        z -= f * (f1 * f1 - 0.5 * fe) / (f1 * (f1 * f1 - fe) + f * fe * (1.0 / 6.0));
    }
    return z;
}

/// The pointers are parameters, because only then the compiler assumes that they do not overlap.
inline void point_loop(std::size_t count, const double* __restrict light,
                       const double* __restrict ln_i0, const double* __restrict rs,
                       const double* __restrict gsh, const double* __restrict a,
                       const double* __restrict load, double* __restrict voltage,
                       double* __restrict current) {
    for (std::size_t i = 0; i < count; ++i) {
        double total = load[i] + rs[i];
        total = total > smallest_resistance_ohm ? total : smallest_resistance_ohm;
        const double il = light[i] > 0.0 ? light[i] : 0.0;
        const double c = il + exponential(ln_i0[i]);
        const double per_ohm = 1.0 / total;
        const double q = a[i] * (gsh[i] + per_ohm);
        const double z = solve<3>(c, q, ln_i0[i], rough_logarithm(c) - ln_i0[i]);
        double through = a[i] * z * per_ohm;
        through = light[i] > 0.0 ? through : 0.0;
        current[i] = through;
        voltage[i] = through * load[i];
    }
}

void operating_points(const Curves& curves, const Points& points) {
    point_loop(curves.count, curves.light_current_a, curves.ln_saturation_current,
               curves.series_resistance_ohm, curves.shunt_conductance_s, curves.ideality_v,
               points.resistance_ohm, points.voltage_v, points.current_a);
}

/// With x = V + I Rs and g = -dI/dx, dP/dx = I (1 + 2 g Rs) - g x falls through zero once. Newton
/// from near where a diode without Rs and shunt has its maximum.
inline void maximum_loop(std::size_t count, const double* __restrict light,
                         const double* __restrict ln_i0, const double* __restrict rs,
                         const double* __restrict gsh, const double* __restrict a,
                         double* __restrict power, double* __restrict move) {
    for (std::size_t i = 0; i < count; ++i) {
        const double il = light[i] > 0.0 ? light[i] : 1e-300;
        const double c = il + exponential(ln_i0[i]);
        const double ln_ratio = rough_logarithm(c) - ln_i0[i];
        // From here on in units of a.
        const double shunt = a[i] * gsh[i];
        const double series = rs[i] / a[i];
        double z = ln_ratio - rough_logarithm(1.0 + ln_ratio);
        z = ln_ratio - rough_logarithm(1.0 + z);
        double step = 0.0;
        for (int n = 0; n < 6; ++n) {
            const double e = exponential(z + ln_i0[i]);
            const double g = e + shunt;
            const double current = c - e - shunt * z;
            const double slope = current * (1.0 + 2.0 * g * series) - g * z;
            const double bend = -g * (2.0 + 2.0 * g * series) + e * (2.0 * current * series - z);
            step = slope / bend;
            z -= step;
        }
        const double current = c - exponential(z + ln_i0[i]) - shunt * z;
        const double watts = a[i] * current * (z - current * series);
        power[i] = light[i] > 0.0 ? watts : 0.0;
        move[i] = light[i] > 0.0 ? step : 0.0;
    }
}

void maximum_powers(const Curves& curves, double* power_w, double* move) {
    maximum_loop(curves.count, curves.light_current_a, curves.ln_saturation_current,
                 curves.series_resistance_ohm, curves.shunt_conductance_s, curves.ideality_v,
                 power_w, move);
}

void energy_sums(const Curves& curves, const Sums& sums) {
    const double* load = sums.resistance_ohm;
    double* __restrict energy = sums.energy_wh;
    double* __restrict slope = sums.slope_wh;
    const std::size_t loads = sums.count;
    for (std::size_t k = 0; k < curves.count; ++k) {
        const double light = curves.light_current_a[k];
        if (light <= 0.0) continue;
        const double ln_i0 = curves.ln_saturation_current[k];
        const double rs = curves.series_resistance_ohm[k];
        const double gsh = curves.shunt_conductance_s[k];
        const double a = curves.ideality_v[k];
        const double hours = sums.hours[k];
        const double c = light + exponential(ln_i0);
        const double ln_ratio = rough_logarithm(c) - ln_i0;
        const double per_a = 1.0 / a;
        for (std::size_t i = 0; i < loads; ++i) {
            double total = load[i] + rs;
            total = total > smallest_resistance_ohm ? total : smallest_resistance_ohm;
            const double per_ohm = 1.0 / total;
            const double q = a * (gsh + per_ohm);
            const double z = solve<2>(c, q, ln_i0, ln_ratio);
            const double current = a * z * per_ohm;
            const double power = hours * current * current * load[i];
            const double conductance = (c - q * z) * per_a + gsh;
            energy[i] += power;
            slope[i] += power * (1.0 - 2.0 * load[i] * conductance / (1.0 + conductance * total));
        }
    }
}

}  // namespace
}  // namespace heatmatch::kernel
