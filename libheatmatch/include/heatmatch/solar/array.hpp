#pragma once

#include "heatmatch/solar/single_diode.hpp"

namespace heatmatch {

/// I-V curve of an array: the scaled curve of one of its equal panels. Voltages are those behind
/// the blocking diodes of its strings, if it has them; through these no current flows backwards.
struct ArrayCurve {
    DiodeCurve panel{};
    int series = 1;
    int parallel = 1;
    double drop_v = 0.0;  //!< of the blocking diode of each string; 0 for none [V]

    /// Load resistance of one panel when the array feeds `resistance_ohm`: R P/S [ohm].
    [[nodiscard]] double per_panel_ohm(double resistance_ohm) const;
    [[nodiscard]] double current_a(double voltage_v) const;
    [[nodiscard]] double voltage_v(double current_a) const;
    [[nodiscard]] OperatingPoint into_resistance(double resistance_ohm) const;
    [[nodiscard]] OperatingPoint maximum_power() const;
    [[nodiscard]] double open_circuit_voltage_v() const;
    [[nodiscard]] double short_circuit_current_a() const;
};

/// Equal panels: strings of `series` panels, `parallel` of them. All share the curve of one panel,
/// so that curve covers every hook-up and every resistance.
struct Array {
    SingleDiode panel{};
    int series = 1;
    int parallel = 1;
    double drop_v = 0.0;  //!< of the blocking diode of each string; 0 for none [V]

    /// Throws InvalidInput unless both counts are at least 1.
    [[nodiscard]] static Array uniform(const SingleDiode& panel, int series, int parallel);
    [[nodiscard]] ArrayCurve at(double irradiance_w_m2, double cell_temperature_c) const;
};

}  // namespace heatmatch
