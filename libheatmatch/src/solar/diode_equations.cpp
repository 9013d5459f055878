#include "diode_equations.hpp"

#include <cmath>

#include <boost/math/tools/roots.hpp>

#include "heatmatch/base/units.hpp"

namespace heatmatch {

namespace {

constexpr double t0_k = stc_temperature_c + zero_celsius_k;

template <class Function>
double bracketed_root(Function function, double low, double high) {
    std::uintmax_t steps = 200;
    const auto [left, right] = boost::math::tools::toms748_solve(
        function, low, high, boost::math::tools::eps_tolerance<double>(52), steps);
    return 0.5 * (left + right);
}

/// j and g from the three points at STC, given A and r.
ScaledDiode linear_solution(const ScaledLabel& label, double a, double r) {
    const auto e = [a](double x) { return std::exp(-(1.0 - x) / a); };
    const double x_m = label.v + label.i * r;
    const double d = (1.0 - e(r)) * (x_m - r) - (1.0 - r) * (e(x_m) - e(r));
    return {.a = a,
            .r = r,
            .g = ((1.0 - e(r)) * (1.0 - label.i) - (e(x_m) - e(r))) / d,
            .j = ((x_m - r) - (1.0 - label.i) * (1.0 - r)) / d};
}

/// dP/dV at the label's maximum power point, divided by -Isc/Voc.
double power_residual(const ScaledLabel& label, const ScaledDiode& p) {
    const double x_m = label.v + label.i * p.r;
    return p.j * std::exp(-(1.0 - x_m) / p.a) / p.a + p.g - label.i / (label.v - label.i * p.r);
}

/// The series resistance for which the maximum is at the label's point; empty if it would be
/// negative, that is if A is too large.
std::optional<ScaledDiode> inner_solution(const ScaledLabel& label, double a) {
    const auto residual = [&](double r) {
        return power_residual(label, linear_solution(label, a, r));
    };
    const double end = (1.0 - label.v) / label.i * (1.0 - 1e-13);
    if (residual(0.0) >= 0.0 || residual(end) <= 0.0) return std::nullopt;
    return linear_solution(label, a, bracketed_root(residual, 0.0, end));
}

/// Residual of beta [1/K]; increases with A along the inner solutions.
double beta_residual(const ScaledLabel& label, const ScaledDiode& p) {
    return p.j * (label.kappa + (label.beta - 1.0 / t0_k) / p.a) + label.beta * p.g - label.alpha;
}

double first_ideality(const ScaledLabel& label) {
    return (1.0 / t0_k - label.beta) / (label.kappa - label.alpha);
}

struct ScaledMaximum {
    double v = 0.0;
    double i = 0.0;
};

/// Maximum power point of a curve without shunt, by the same slope as in DiodeCurve.
ScaledMaximum maximum_of(double a, double r) {
    const double j = 1.0 / (1.0 - std::exp(-(1.0 - r) / a));
    const auto e = [&](double x) { return j * std::exp(-(1.0 - x) / a); };
    const double x = bracketed_root(
        [&](double trial) {
            const double g = e(trial) / a;
            return (j - e(trial)) * (1.0 + 2.0 * g * r) - g * trial;
        },
        0.0, 1.0);
    const double i = j - e(x);
    return {.v = x - i * r, .i = i};
}

double power_of(double a, double r) {
    const ScaledMaximum point = maximum_of(a, r);
    return point.v * point.i;
}

}  // namespace

double kappa_of(double band_gap_ev) {
    const double gap_k = band_gap_ev / boltzmann_ev_per_k;
    return 3.0 / t0_k + gap_k / (t0_k * t0_k) - gap_k * band_gap_per_k / t0_k;
}

double band_gap_of(double kappa_per_k) {
    return (kappa_per_k - 3.0 / t0_k) * boltzmann_ev_per_k /
           (1.0 / (t0_k * t0_k) - band_gap_per_k / t0_k);
}

std::optional<ScaledDiode> exact_solution(const ScaledLabel& label) {
    constexpr double smallest_a = 1e-3;
    double low = first_ideality(label);
    std::optional<ScaledDiode> at_low = inner_solution(label, low);
    while ((!at_low || beta_residual(label, *at_low) > 0.0) && low > smallest_a) {
        low *= 0.7;
        at_low = inner_solution(label, low);
    }
    if (!at_low || beta_residual(label, *at_low) > 0.0) return std::nullopt;
    double high = low * 1.3;
    std::optional<ScaledDiode> at_high = inner_solution(label, high);
    while (at_high && beta_residual(label, *at_high) < 0.0) {
        low = high;
        high *= 1.3;
        at_high = inner_solution(label, high);
    }
    // Above the largest A there is no inner root: approach that end from below.
    for (int halving = 0; !at_high && halving < 60; ++halving) {
        const double middle = 0.5 * (low + high);
        const std::optional<ScaledDiode> at_middle = inner_solution(label, middle);
        if (!at_middle) {
            high = middle;
        } else if (beta_residual(label, *at_middle) < 0.0) {
            low = middle;
        } else {
            high = middle;
            at_high = at_middle;
        }
    }
    if (!at_high) return std::nullopt;
    const auto residual = [&label](double a) {
        const std::optional<ScaledDiode> p = inner_solution(label, a);
        return p ? beta_residual(label, *p) : 1.0;
    };
    const std::optional<ScaledDiode> solution =
        inner_solution(label, bracketed_root(residual, low, high));
    if (!solution || solution->g < 0.0) return std::nullopt;
    return solution;
}

ScaledDiode split_solution(ScaledLabel& label, FitMode& mode) {
    const double power = label.v * label.i;
    double a = first_ideality(label);
    double r = 0.0;
    if (power_of(a, 0.0) > power) {
        mode = FitMode::split;
        r = bracketed_root([&](double trial) { return power_of(a, trial) - power; }, 0.0, 0.6);
    } else {
        mode = FitMode::gap;
        a = bracketed_root([&](double trial) { return power_of(trial, 0.0) - power; }, 1e-3, a);
    }
    const double j = 1.0 / (1.0 - std::exp(-(1.0 - r) / a));
    if (mode == FitMode::gap) label.kappa = label.alpha / j - (label.beta - 1.0 / t0_k) / a;
    const ScaledMaximum point = maximum_of(a, r);
    label.v = point.v;
    label.i = point.i;
    return {.a = a, .r = r, .g = 0.0, .j = j};
}

double model_gamma(const ScaledLabel& label, const ScaledDiode& p) {
    const double x_m = label.v + label.i * p.r;
    const double e = std::exp(-(1.0 - x_m) / p.a);
    return (label.v - label.i * p.r) *
           (label.alpha - p.j * e * (label.kappa - x_m / (p.a * t0_k))) / (label.v * label.i);
}

}  // namespace heatmatch
