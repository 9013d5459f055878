#pragma once

#include "diode_root.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <vector>

#include "heatmatch/solar/string_curve.hpp"

namespace heatmatch {

/// Equal substrings under equal light in one string.
struct SubstringKind {
    SingleDiode one{};
    std::optional<double> bypass_v{};
    std::size_t plane = 0;
    double noct_c = 45.0;
    double light = 1.0;  //!< share that its shade leaves
    double count = 0.0;

    [[nodiscard]] bool equals(const SubstringKind& other) const {
        return bypass_v == other.bypass_v && plane == other.plane && noct_c == other.noct_c &&
               light == other.light && one.light_current_a == other.one.light_current_a &&
               one.ln_saturation_current == other.one.ln_saturation_current &&
               one.series_resistance_ohm == other.one.series_resistance_ohm &&
               one.shunt_conductance_s == other.one.shunt_conductance_s &&
               one.modified_ideality_v == other.one.modified_ideality_v &&
               one.alpha_isc_a_per_k == other.one.alpha_isc_a_per_k &&
               one.band_gap_ev == other.one.band_gap_ev &&
               one.band_gap_per_k == other.one.band_gap_per_k &&
               one.series_resistance_per_k == other.one.series_resistance_per_k;
    }
};

/// Those substrings in one node. Its diode voltage is kept from point to point.
struct WarmSubstrings {
    DiodeCurve curve{};
    double count = 0.0;
    double bypass_v = 0.0;
    double bypass_from_a = HUGE_VAL;  //!< current above which the bypass diode conducts
    double i0_a = 0.0;
    double q_v = 0.0;
    double z = std::numeric_limits<double>::quiet_NaN();  //!< diode voltage over the ideality

    void set(const SubstringKind& kind, const DiodeCurve& at) {
        curve = at;
        count = kind.count;
        bypass_v = kind.bypass_v.value_or(0.0);
        i0_a = clamped_exp(at.ln_saturation_current);
        q_v = at.ideality_v * at.shunt_conductance_s;
        z = std::numeric_limits<double>::quiet_NaN();
        bypass_from_a = kind.bypass_v
                            ? EqualSubstrings{.curve = at, .count = 1.0}.current_a(-bypass_v)
                            : HUGE_VAL;
    }
    /// Moves z to the root of `exp(z + ln_i0) + q z = c`, from where it is; returns the
    /// exponential.
    double settle(double c) {
        if (q_v <= 0.0) {
            z = std::log(c) - curve.ln_saturation_current;
            return c;
        }
        for (int step = 0; std::isfinite(z) && step < 3; ++step) {
            const double e = clamped_exp(z + curve.ln_saturation_current);
            const double f1 = e + q_v;
            const double miss = e + q_v * z - c;
            const double fe = miss * e;
            const double move =
                miss * (f1 * f1 - 0.5 * fe) / (f1 * (f1 * f1 - fe) + miss * fe / 6.0);
            if (!(std::fabs(move) < 0.5)) break;
            z -= move;
            // The next error is of the fourth power of this one.
            constexpr double small = 1e-2;
            if (std::fabs(move) < small) return e * (1.0 - move + 0.5 * move * move);
        }
        z = solve_diode(c, q_v, curve.ln_saturation_current);
        return clamped_exp(z + curve.ln_saturation_current);
    }
    /// Voltage and slope at a current, added to those of the string.
    void add(double current_a, double& voltage_v, double& slope_ohm) {
        if (current_a >= bypass_from_a) {
            voltage_v -= count * bypass_v;
            return;
        }
        const double c = curve.light_current_a + i0_a - current_a;
        if (c <= 0.0 && q_v <= 0.0) {
            voltage_v = -HUGE_VAL;
            return;
        }
        const double e = settle(c);
        voltage_v += count * (curve.ideality_v * z - current_a * curve.series_resistance_ohm);
        slope_ohm -= count * (curve.ideality_v / (e + q_v) + curve.series_resistance_ohm);
    }
};

/// A string in one node.
struct WarmString {
    /// A current at which bypass diodes begin to conduct, and the resistance into which it flows.
    struct Kink {
        double current_a = 0.0;
        double ohm = 0.0;
    };
    std::vector<WarmSubstrings> kinds{};
    double blocking_v = 0.0;
    bool blocks = false;
    double open_v = 0.0;     //!< behind the blocking diode
    double largest_a = 0.0;  //!< no substring has a positive voltage above it
    double current_a = 0.0;
    double slope_ohm = -1.0;  //!< dV/dI at that current
    std::vector<Kink> kinks{};

    double voltage_at(double current) {
        double voltage_v = -blocking_v;
        slope_ohm = 0.0;
        for (WarmSubstrings& kind : kinds) kind.add(current, voltage_v, slope_ohm);
        return voltage_v;
    }
    void begin() {
        largest_a = 0.0;
        for (const WarmSubstrings& kind : kinds) {
            largest_a = std::max(largest_a,
                                 EqualSubstrings{.curve = kind.curve, .count = 1.0}.current_a(0.0));
        }
        open_v = voltage_at(0.0);
        kinks.clear();
        if (kinds.size() < 2) return;
        for (const WarmSubstrings& kind : kinds) {
            const double current = kind.bypass_from_a;
            if (!(current > 0.0 && current < largest_a)) continue;
            kinks.push_back({current, voltage_at(current) / current});
        }
    }
    /// Narrows a bracket of the current into a resistance to between two kinks.
    void narrow(double ohm, double& low, double& high) const {
        for (const Kink& kink : kinks) {
            double& end = ohm < kink.ohm ? low : high;
            end = ohm < kink.ohm ? std::max(low, kink.current_a) : std::min(high, kink.current_a);
        }
    }
};

/// Value and slope of a falling function, and the size of its terms.
struct FallingValue {
    double value = 0.0;
    double slope = 0.0;
    double scale = 1.0;
};

/// Root of a falling function within a bracket by Newton's steps, from a guess that is near it.
template <class Function>
double warm_root(const Function& function, double low, double high, double guess) {
    constexpr double precise = 1e-6;  // the last step is squared by Newton
    // Where the slope changes much between here and there, that of the root is left behind.
    const auto settled = [&function](double root) {
        static_cast<void>(function(root));
        return root;
    };
    double x = guess >= low && guess <= high ? guess : 0.5 * (low + high);
    for (int step = 0; step < 200; ++step) {
        const FallingValue at = function(x);
        if (at.value == 0.0) return x;
        (at.value > 0.0 ? low : high) = x;
        double next = x - at.value / at.slope;
        const bool inside = next > low && next < high;
        if (!inside) next = 0.5 * (low + high);
        const double move = std::fabs(next - x);
        if (high - low <= 1e-13 * std::max(std::fabs(low), std::fabs(high))) return settled(next);
        if (inside && move <= precise * std::fabs(next)) {
            constexpr double near = 1e-3;
            if (std::fabs(at.value) <= near * at.scale) return next;
            // So steep that the root may be far in value: it must lie between here and the probe.
            const double reach = std::max(2.0 * move, 1e-12 * std::fabs(next));
            const double probe = next + (at.value > 0.0 ? reach : -reach);
            if (!(probe > low && probe < high)) return settled(next);
            const double there = function(probe).value;
            if ((there > 0.0) != (at.value > 0.0)) return settled(next);
            (there > 0.0 ? low : high) = probe;
            next = 0.5 * (low + high);
        }
        x = next;
    }
    return x;
}

}  // namespace heatmatch
