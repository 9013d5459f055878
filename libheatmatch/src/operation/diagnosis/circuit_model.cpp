#include "circuit_model.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/solar/array.hpp"

namespace heatmatch {

namespace {

/// Complete strings and one incomplete string in parallel.
struct MixedArray {
    DiodeCurve panel{};
    double series = 1.0;
    int parallel = 1;
    double odd_series = 0.0;

    [[nodiscard]] double current_a(double voltage_v) const {
        return parallel * panel.current_a(voltage_v / series) +
               panel.current_a(voltage_v / odd_series);
    }
    /// Voltage at which the strings' current equals that of a conductance; the difference decreases
    /// monotonically.
    [[nodiscard]] double voltage_into(double conductance_s) const {
        double low = 0.0;
        double high = panel.open_circuit_voltage_v() * std::max(series, odd_series);
        const auto excess = [&](double v) { return current_a(v) - v * conductance_s; };
        double at_low = excess(low);
        double at_high = excess(high);
        if (at_high >= 0.0 || at_low <= 0.0) return high;
        double v = high;
        int side = 0;
        constexpr int most_steps = 60;
        for (int step = 0; step < most_steps; ++step) {
            // The reverse current of a weak string is steep: bisect when the chord does not help.
            const bool halve = step % 4 == 3;
            v = halve ? 0.5 * (low + high) : (low * at_high - high * at_low) / (at_high - at_low);
            const double at = excess(v);
            if (at > 0.0) {
                low = v;
                at_low = at;
                if (side == 1) at_high *= 0.5;
                side = 1;
            } else {
                high = v;
                at_high = at;
                if (side == -1) at_low *= 0.5;
                side = -1;
            }
            if (high - low < 1e-7 * high || at == 0.0) break;
        }
        return v;
    }
};

struct Point {
    double current_a = 0.0;
    double open_v = 0.0;
    double short_a = 0.0;
};

Point point_of(const Plant& plant, const DiodeCurve& curve, double load_ohm, const Wanted& wanted) {
    const double per_panel = plant.parallel / plant.series;
    Point point;
    if (plant.odd_series <= 0.0) {
        if (wanted.load) {
            point.current_a =
                curve.into_resistance(load_ohm * per_panel).current_a * plant.parallel;
        }
        if (wanted.open) point.open_v = curve.open_circuit_voltage_v() * plant.series;
        if (wanted.shorted) {
            point.short_a =
                curve.into_resistance(plant.array_joint_ohm * per_panel).current_a * plant.parallel;
        }
        return point;
    }
    const MixedArray mixed{.panel = curve,
                           .series = plant.series,
                           .parallel = plant.parallel,
                           .odd_series = plant.odd_series};
    if (wanted.load && std::isfinite(load_ohm)) {
        const double conductance = 1.0 / std::max(load_ohm, 1e-6);
        point.current_a = mixed.voltage_into(conductance) * conductance;
    }
    if (wanted.open) point.open_v = mixed.voltage_into(0.0);
    if (wanted.shorted) point.short_a = mixed.current_a(0.0);
    return point;
}

}  // namespace

Values predict(const Plant& plant, double irradiance_w_m2, double cell_c, const Wanted& wanted) {
    Values values{};
    values[irradiance] = irradiance_w_m2;
    values[panel_temperature] = cell_c - cell_above_back_k;
    values[element_ohm] = plant.element_ohm;
    values[bank_ohm] = plant.bank_ohm;
    if (!wanted.load && !wanted.open && !wanted.shorted) return values;
    DiodeCurve curve = plant.diode.at(irradiance_w_m2 * plant.sun_factor, cell_c);
    if (curve.light_current_a <= 0.0) return values;
    curve.series_resistance_ohm += plant.extra_series_ohm;
    const double hot = plant.bank_ohm * plant.hot_ratio;
    const bool open_bank = !std::isfinite(hot);
    const double between = plant.wire_ohm + plant.joint_ohm;
    Wanted asked = wanted;
    asked.open = wanted.open || (open_bank && wanted.load);
    const Point point = point_of(plant, curve, hot + between + plant.array_joint_ohm, asked);
    values[open_v] = point.open_v;
    values[short_a] = point.short_a;
    values[bank_a] = open_bank ? 0.0 : point.current_a;
    values[bank_v] = open_bank ? point.open_v : point.current_a * hot;
    values[array_v] = open_bank ? point.open_v : point.current_a * (hot + between);
    return values;
}

}  // namespace heatmatch
