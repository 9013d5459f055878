#pragma once

#include <algorithm>
#include <cmath>
#include <functional>
#include <vector>

#include "heatmatch/heat/air.hpp"
#include "heatmatch/heat/hot_tail.hpp"

/// The end of an element and its wire in cells of a millimetre, each of which loses what its own
/// temperature makes it lose: by Newton's method at the surface and along the rod.
struct FineTail {
    double terminal_c = 0.0;
    std::vector<double> wire_c{};  //!< of the cells of wire

    static constexpr double cell_m = 0.001;

    [[nodiscard]] double wire_at(double from_terminal_m) const {
        if (from_terminal_m <= 0.0) return terminal_c;
        const double at = from_terminal_m / cell_m - 0.5;
        const auto cell = static_cast<std::size_t>(std::max(0.0, at));
        const double share = at - static_cast<double>(cell);
        return at < 0.0 ? wire_c.front() : wire_c[cell] + share * (wire_c[cell + 1] - wire_c[cell]);
    }
};

namespace fine_tail {

inline constexpr double pi = 3.14159265358979323846;
inline constexpr double sigma = 5.670374e-8;

/// Through cylinders out to 0.1 m [W/mK].
inline double shell(double diameter_m, double conductivity) {
    return 2.0 * pi * conductivity / std::log(0.2 / diameter_m);
}

/// How a metre of the wire gives its heat off.
struct Wrap {
    double diameter_m = 0.0;
    double inside_k_m_per_w = 0.0;  //!< of the insulation
    double around_c = 0.0;
    double share = 1.0;  //!< of the current of a single wire
    double shell_w_mk = 0.0;
    double emissivity = 0.9;
    double sun_w_m2 = 0.0;
    double wind_m_s = 0.0;

    [[nodiscard]] double surface_w_m(double surface_c) const {
        if (shell_w_mk > 0.0) return shell_w_mk * (surface_c - around_c);
        const double hot_k = surface_c + 273.15;
        const double air_k = around_c + 273.15;
        const double h = heatmatch::convection_cylinder(diameter_m, hot_k, air_k, wind_m_s);
        return pi * diameter_m *
                   (h * (hot_k - air_k) +
                    emissivity * sigma * (std::pow(hot_k, 4.0) - std::pow(air_k, 4.0))) -
               0.9 * sun_w_m2 * diameter_m;
    }
    [[nodiscard]] double lost_w_m(double inside_c) const {
        if (inside_k_m_per_w <= 0.0) return share * share * surface_w_m(inside_c);
        const auto rest = [&](double at_c) {
            return (inside_c - at_c) / inside_k_m_per_w - surface_w_m(at_c);
        };
        double surface_c = inside_c;
        for (int i = 0; i < 6; ++i) {
            constexpr double step_k = 0.01;
            const double at = rest(surface_c);
            surface_c += step_k * at / (at - rest(surface_c + step_k));
        }
        return share * share * (inside_c - surface_c) / inside_k_m_per_w;
    }
};

struct Cell {
    double length_m = 0.0;
    double ka_w_m_k = 0.0;
    std::function<double(double)> lost_w_m{};  //!< less what is made in it
};

inline void add(std::vector<Cell>& cells, double length_m, double ka,
                const std::function<double(double)>& lost) {
    const auto count = std::lround(length_m / FineTail::cell_m);
    for (long i = 0; i < count; ++i) cells.push_back({FineTail::cell_m, ka, lost});
}

/// Newton's method: each round a tridiagonal system.
inline std::vector<double> solve(const std::vector<Cell>& cells, std::size_t terminal,
                                 double contact_w, double start_c) {
    const std::size_t n = cells.size();
    std::vector<double> at(n, start_c);
    const auto link = [&](std::size_t i) {
        return 2.0 / (cells[i].length_m / cells[i].ka_w_m_k +
                      cells[i + 1].length_m / cells[i + 1].ka_w_m_k);
    };
    for (int round = 0; round < 60; ++round) {
        std::vector<double> diagonal(n), upper(n), rest(n);
        double moved = 0.0;
        for (std::size_t i = 0; i < n; ++i) {
            const double lost = cells[i].lost_w_m(at[i]);
            const double slope = (cells[i].lost_w_m(at[i] + 0.05) - lost) / 0.05;
            diagonal[i] = slope * cells[i].length_m;
            rest[i] = -lost * cells[i].length_m;
            if (i == terminal || i + 1 == terminal) rest[i] += 0.5 * contact_w;
            if (i > 0) {
                diagonal[i] += link(i - 1);
                rest[i] -= link(i - 1) * (at[i] - at[i - 1]);
            }
            if (i + 1 < n) {
                diagonal[i] += link(i);
                upper[i] = -link(i);
                rest[i] -= link(i) * (at[i] - at[i + 1]);
            }
        }
        for (std::size_t i = 1; i < n; ++i) {
            const double factor = upper[i - 1] / diagonal[i - 1];
            diagonal[i] -= factor * upper[i - 1];
            rest[i] -= factor * rest[i - 1];
        }
        double next = 0.0;
        for (std::size_t i = n; i-- > 0;) {
            next = (rest[i] - upper[i] * next) / diagonal[i];
            at[i] += next;
            moved = std::max(moved, std::fabs(next));
        }
        if (moved < 1e-7) break;
    }
    return at;
}

}  // namespace fine_tail
