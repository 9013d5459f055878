#pragma once

#include <cmath>
#include <numbers>

// Exact solutions of conduction with constant properties, to test numerical ones against. Sources:
// Carslaw & Jaeger, Conduction of Heat in Solids, 2nd ed., sections 10.4 (line sources), 7.6 and
// 3.11 (cylinder and slab that lose heat at their surface).

/// Rise at a distance from an endless line of `w_m` [K].
inline double line_rise_k(double w_m, double k, double diffusivity, double distance_m, double s) {
    const double x = distance_m * distance_m / (4.0 * diffusivity * s);
    return w_m / (4.0 * std::numbers::pi * k) * -std::expint(-x);
}

/// Rise beside the middle of a line of finite length [K]:
/// `q'/(4 pi k) integral erfc(R/sqrt(4at))/R dz`.
inline double finite_line_rise_k(double w_m, double k, double diffusivity, double length_m,
                                 double distance_m, double s) {
    // z = d sinh(u) takes 1/R out of the integral.
    const double reach = std::sqrt(4.0 * diffusivity * s);
    const double end = std::asinh(0.5 * length_m / distance_m);
    constexpr int slices = 2000;
    double sum = 0.0;
    for (int i = 0; i < slices; ++i) {
        const double u = end * (i + 0.5) / slices;
        sum += std::erfc(distance_m * std::cosh(u) / reach);
    }
    return w_m / (2.0 * std::numbers::pi * k) * sum * end / slices;
}

namespace exact_conduction {

template <typename Function>
double root(Function f, double low, double high) {
    const bool rising = f(high) > f(low);
    for (int halving = 0; halving < 100; ++halving) {
        const double middle = 0.5 * (low + high);
        ((f(middle) < 0.0) == rising ? low : high) = middle;
    }
    return 0.5 * (low + high);
}

}  // namespace exact_conduction

/// Share of the excess over the surroundings that an endless cylinder still has in the mean:
/// `sum 4 Bi²/(l²(l² + Bi²)) exp(-l² Fo)` over the roots of `l J1(l) = Bi J0(l)`.
inline double cylinder_left(double biot, double fourier) {
    double sum = 0.0;
    double from = 0.0;
    for (int n = 0; n < 200; ++n) {
        // One root between a zero of J1 and the next zero of J0, about pi apart.
        const double to = exact_conduction::root([](double x) { return std::cyl_bessel_j(0.0, x); },
                                                 from + 0.5, from + 2.6);
        const double l = exact_conduction::root(
            [&](double x) {
                return x * std::cyl_bessel_j(1.0, x) - biot * std::cyl_bessel_j(0.0, x);
            },
            from, to);
        sum += 4.0 * biot * biot / (l * l * (l * l + biot * biot)) * std::exp(-l * l * fourier);
        from = exact_conduction::root([](double x) { return std::cyl_bessel_j(1.0, x); }, to + 0.5,
                                      to + 2.6);
    }
    return sum;
}

/// The same of a slab of half thickness 1: `sum 2 Bi²/(l²(l² + Bi² + Bi)) exp(-l² Fo)` over the
/// roots of `l tan l = Bi`.
inline double slab_left(double biot, double fourier) {
    double sum = 0.0;
    for (int n = 0; n < 200; ++n) {
        const double from = n * std::numbers::pi;
        const double l =
            exact_conduction::root([&](double x) { return x * std::sin(x) - biot * std::cos(x); },
                                   from, from + 0.5 * std::numbers::pi);
        // Beyond an odd number of half turns sine and cosine both change sign: the root stays.
        sum +=
            2.0 * biot * biot / (l * l * (l * l + biot * biot + biot)) * std::exp(-l * l * fourier);
    }
    return sum;
}
