#pragma once

#include <algorithm>
#include <optional>
#include <vector>

#include "heatmatch/solar/string_curve.hpp"

namespace heatmatch {

/// A panel at the operating point of its array.
struct PanelPoint {
    double voltage_v = 0.0;        //!< at its terminals; negative where bypassed or reversed [V]
    double current_a = 0.0;        //!< of its string; negative: reverse current [A]
    double power_w = 0.0;          //!< negative: the panel absorbs it [W]
    std::vector<bool> bypassed{};  //!< of each substring: its bypass diode conducts
    double bypass_w = 0.0;         //!< heat of those diodes [W]

    [[nodiscard]] int substrings_bypassed() const {
        return static_cast<int>(std::count(bypassed.begin(), bypassed.end(), true));
    }
};

/// A string at the operating point of its array.
struct StringPoint {
    double current_a = 0.0;   //!< [A]
    double blocking_w = 0.0;  //!< heat of the blocking diode [W]
    std::vector<PanelPoint> panels{};
};

/// Operating point of an array with all its strings and panels.
struct ArrayPoint {
    OperatingPoint total{};
    std::vector<StringPoint> strings{};
};

/// The I-V curve of an array of unlike panels, from 0 V to its open-circuit voltage.
class MixedArrayCurve {
  public:
    /// What a panel is made of here: of one string, its curves from substring to substring.
    struct Panel {
        std::vector<DiodeCurve> substrings{};
        std::optional<double> bypass_v{};
    };
    struct String {
        StringCurve curve{};
        std::vector<Panel> panels{};
    };

    explicit MixedArrayCurve(std::vector<String> strings);

    /// Current at a voltage of 0 or more [A]; negative above the open-circuit voltage.
    [[nodiscard]] double current_a(double voltage_v) const;
    /// Voltage at a current from 0 to the short-circuit current [V].
    [[nodiscard]] double voltage_v(double current_a) const;
    /// Operating point into a resistance from 0 to infinity [ohm].
    [[nodiscard]] OperatingPoint into_resistance(double resistance_ohm) const;
    /// Volts, amperes and watts of every string and panel at a voltage of the array.
    [[nodiscard]] ArrayPoint at_voltage(double voltage_v) const;
    /// Every maximum of power over voltage, by rising voltage. Between two kinks `P(V)` is concave,
    /// so it has one maximum there at most.
    [[nodiscard]] std::vector<OperatingPoint> power_maxima() const;
    [[nodiscard]] OperatingPoint maximum_power() const;
    /// Sum of the largest powers of all panels, each alone; no operating point exceeds it [W].
    [[nodiscard]] double sum_of_maxima_w() const;
    [[nodiscard]] double open_circuit_voltage_v() const { return open_v_; }
    [[nodiscard]] double short_circuit_current_a() const { return current_a(0.0); }

  private:
    /// Current at a voltage, its slope and the sum of the strings' currents by size.
    struct Sum {
        double current_a = 0.0;
        double slope_s = 0.0;
        double scale_a = 0.0;
    };
    [[nodiscard]] Sum sum_at(double voltage_v) const;

    std::vector<String> strings_{};
    double open_v_ = 0.0;
};

}  // namespace heatmatch
