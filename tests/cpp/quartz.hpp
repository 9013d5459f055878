#pragma once

#include <algorithm>
#include <cmath>

/// Conductivity of a quartz grain [W/mK]: geometric mean of the crystal axes, two across and one
/// along, from Incropera table A.2 at 200, 300, 400, 600 and 800 K (from memory); constant beyond.
inline double quartz_w_mk(double t_c) {
    constexpr double t_k[] = {200.0, 300.0, 400.0, 600.0, 800.0};
    constexpr double along[] = {16.4, 10.4, 7.6, 5.0, 4.2};
    constexpr double across[] = {9.5, 6.21, 4.70, 3.4, 3.1};
    const auto mean = [&](int i) { return std::cbrt(along[i] * across[i] * across[i]); };
    const double at = std::clamp(t_c + 273.15, t_k[0], t_k[4]);
    int i = 0;
    while (i < 3 && t_k[i + 1] < at) ++i;
    return mean(i) + (mean(i + 1) - mean(i)) * (at - t_k[i]) / (t_k[i + 1] - t_k[i]);
}

/// Enthalpy of quartz over the element's reference [J/kg], Shomate's equation, 298..1996 K. Source:
/// NIST Chemistry WebBook, silicon oxide (quartz), Chase 1998 (coefficients from memory).
inline double quartz_enthalpy_j_kg(double t_c) {
    constexpr double molar_kg = 0.0600843;
    constexpr double transition_k = 847.0;
    constexpr double alpha[] = {-6.076591, 251.6755, -324.7964, 168.5604, 0.002548, -917.6893};
    constexpr double beta[] = {58.75340, 10.27925, -0.131384, 0.025210, 0.025601, -929.3292};
    const double t = (t_c + 273.15) / 1000.0;
    const double(&c)[6] = t_c + 273.15 < transition_k ? alpha : beta;
    const double kj_mol = c[0] * t + c[1] * t * t / 2.0 + c[2] * t * t * t / 3.0 +
                          c[3] * t * t * t * t / 4.0 - c[4] / t + c[5];
    return kj_mol * 1000.0 / molar_kg;
}
