#pragma once

#include <optional>
#include <span>
#include <vector>

#include "heatmatch/parts/class_defaults.hpp"
#include "heatmatch/parts/panel.hpp"
#include "heatmatch/solar/cell_temperature.hpp"
#include "heatmatch/solar/mixed_array_curve.hpp"

namespace heatmatch {

/// A panel of a string. Its substrings are equal: each has 1/n of the panel's voltages, series
/// resistance and shunt resistance.
struct StringPanel {
    SingleDiode diode{};
    int substrings = 1;
    bool bypass = true;              //!< one bypass diode across each substring
    double bypass_v = diode_drop_v;  //!< of a conducting bypass diode [V]
    double noct_c = usual_noct_c;    //!< nominal operating cell temperature [°C]
    std::vector<Assumption> assumed{};
};

/// Bypass diodes of a panel: as stated, or three for crystalline silicon and none for thin film
/// (common practice, no source).
[[nodiscard]] int bypass_diodes_of(const Panel& panel);

/// The panel of a label in a string: fitted, with its bypass diodes. Throws
/// InvalidInput for a label no diode can have.
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
