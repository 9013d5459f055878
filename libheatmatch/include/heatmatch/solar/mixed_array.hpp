#pragma once

#include <algorithm>
#include <optional>
#include <span>
#include <vector>

#include "heatmatch/parts/class_defaults.hpp"
#include "heatmatch/parts/panel.hpp"
#include "heatmatch/solar/string_curve.hpp"

namespace heatmatch {

/// A panel of a string. Its substrings are equal: each has 1/n of the panel's voltages, series
/// resistance and shunt resistance.
struct StringPanel {
    SingleDiode diode{};
    int substrings = 1;
    bool bypass = true;              //!< one bypass diode across each substring
    double bypass_v = diode_drop_v;  //!< of a conducting bypass diode [V]
    std::vector<Assumption> assumed{};
};

/// The panel of a label in a string: fitted, with its bypass diodes. Where their number is not
/// stated, crystalline silicon counts three and thin film none (common practice, no source).
/// Throws InvalidInput for a label no diode can have.
[[nodiscard]] StringPanel string_panel(const Panel& panel);

/// Panels in series, with a blocking diode where its voltage is given.
struct PanelString {
    std::vector<StringPanel> panels{};
    std::optional<double> blocking_v{};  //!< of the conducting blocking diode [V]
};

/// Sun and temperature of one panel.
struct PanelConditions {
    double irradiance_w_m2 = 0.0;
    double cell_temperature_c = 25.0;
    std::vector<double> shade{};  //!< of each substring, 0 to 1; empty: none
};

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

/// Strings of unlike panels in parallel. In a string voltages add at equal current, and a bypass
/// diode holds its substring at -0.5 V; across strings currents add at equal voltage, reverse
/// current through a dark or short string included. Points are solved, not sampled: bracketed
/// roots, to 1e-12 of the exact solution of this model.
struct MixedArray {
    std::vector<PanelString> strings{};

    /// Throws InvalidInput for an array or a string without panels, a panel without substrings, or
    /// a diode voltage outside 0 to 2 V.
    [[nodiscard]] static MixedArray of(std::vector<PanelString> strings);
    [[nodiscard]] std::size_t panel_count() const;
    /// The curve with the sun and temperature of each panel, string by string. Throws InvalidInput
    /// for another number of panels or of shades, a negative irradiance or a shade outside 0 to 1.
    [[nodiscard]] MixedArrayCurve at(std::span<const PanelConditions> conditions) const;
};

}  // namespace heatmatch
