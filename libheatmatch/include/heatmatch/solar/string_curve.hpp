#pragma once

#include <optional>
#include <vector>

#include "heatmatch/solar/single_diode.hpp"

namespace heatmatch {

/// Voltage across a conducting bypass or blocking diode, one number everywhere (common practice,
/// no source) [V].
inline constexpr double diode_drop_v = 0.5;

/// Equal substrings of a string: one curve, how many, and what their bypass diode holds.
struct EqualSubstrings {
    DiodeCurve curve{};
    double count = 0.0;
    std::optional<double> bypass_v{};  //!< none: no bypass diode [V]

    /// Current of one of them at a voltage, in the dark too, without its bypass diode [A].
    [[nodiscard]] double current_a(double voltage_v) const;
};

/// The I-V curve of a string: `V(I) = sum of max(v(I), -bypass_v) - blocking_v`. Currents below
/// zero are reverse currents; a blocking diode lets none through.
struct StringCurve {
    std::vector<EqualSubstrings> substrings{};
    std::optional<double> blocking_v{};

    /// Adds a substring to its equals.
    void add(const DiodeCurve& curve, const std::optional<double>& bypass_v);
    /// Voltage at a current, before the blocking diode.
    struct Value {
        double voltage_v = 0.0;  //!< [V]
        double slope_ohm = 0.0;  //!< dV/dI, 0 or below [ohm]
        double scale_v = 0.0;    //!< sum of the sizes of its terms, for rounding [V]
    };
    [[nodiscard]] Value at_current(double current_a) const;
    /// Current at a terminal voltage of 0 or more [A].
    [[nodiscard]] double current_a(double voltage_v) const;
    /// Current into a resistance if this is the only string [A].
    [[nodiscard]] double current_into(double resistance_ohm) const;
    [[nodiscard]] double open_circuit_voltage_v() const;
    /// Terminal voltages at which a bypass diode or the blocking diode begins to conduct [V].
    [[nodiscard]] std::vector<double> kinks_v() const;

  private:
    [[nodiscard]] double largest_current_a() const;
};

}  // namespace heatmatch
