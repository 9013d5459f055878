#pragma once

#include "heatmatch/solar/single_diode.hpp"

namespace heatmatch {

/// An array's I-V curve: that of one of its equal panels, scaled.
struct ArrayCurve {
    DiodeCurve panel{};
    int series = 1;
    int parallel = 1;

    /// Resistance that one panel sees when the array feeds `resistance_ohm`: R P/S [ohm].
    [[nodiscard]] double per_panel_ohm(double resistance_ohm) const;
    [[nodiscard]] double current_a(double voltage_v) const;
    [[nodiscard]] double voltage_v(double current_a) const;
    [[nodiscard]] OperatingPoint into_resistance(double resistance_ohm) const;
    [[nodiscard]] OperatingPoint maximum_power() const;
    [[nodiscard]] double open_circuit_voltage_v() const;
    [[nodiscard]] double short_circuit_current_a() const;
};

/// Equal panels: strings of `series` panels, `parallel` of them. They share one curve per panel,
/// so every hook-up and every resistance needs that one only.
struct Array {
    SingleDiode panel{};
    int series = 1;
    int parallel = 1;

    /// Throws InvalidInput unless both counts are at least 1.
    [[nodiscard]] static Array uniform(const SingleDiode& panel, int series, int parallel);
    [[nodiscard]] ArrayCurve at(double irradiance_w_m2, double cell_temperature_c) const;
};

}  // namespace heatmatch
