#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "heatmatch/parts/parts.hpp"
#include "heatmatch/setting/installation.hpp"
#include "heatmatch/setting/layout.hpp"
#include "heatmatch/solar/mixed_array.hpp"
#include "heatmatch/solar/panel_in_service.hpp"

namespace heatmatch {

/// Panels of one group in an array.
struct GroupInArray {
    OwnedPanels owned{};
    PanelInService panel{};
    int count = 0;
};

/// The condition in which the panels of an array are computed.
enum class PanelState {
    today,     //!< aged or measured, typical
    weak,      //!< the same with currents at their low ends
    strong,    //!< the same with currents at their high ends
    brightest  //!< as new, or as measured where that is higher, with the most rear light
};
/// A panel in that condition.
[[nodiscard]] SingleDiode panel_as(const PanelInService& panel, PanelState state);

/// Strings of panels of several groups in parallel. In a string voltages add at equal current, with
/// a bypass diode across each substring; across strings currents add at equal voltage.
struct UnlikeArray {
    Layout layout{};                                  //!< its names are groups
    std::vector<GroupInArray> groups{};               //!< each once, in the order of the layout
    std::vector<std::vector<std::size_t>> strings{};  //!< index of the group of each panel

    /// Counts one more panel of a group; returns the index of the group, added where it is new.
    std::size_t add(const OwnedPanels& owned, const PanelInService& panel);
    [[nodiscard]] const PanelInService& panel(std::size_t group) const {
        return groups[group].panel;
    }
    [[nodiscard]] int panel_count() const;
    /// Panels of a group in a string.
    [[nodiscard]] int count_in(std::size_t string, std::size_t group) const;
    /// Voc of a string at the record low, by each panel's own coefficient [V].
    [[nodiscard]] double cold_voltage_v(std::size_t string) const;
    /// Vmp of a string by its labels [V].
    [[nodiscard]] double label_vmp_v(std::size_t string) const;
    /// Short-circuit current of a string at full irradiance with the most rear light: that of its
    /// strongest panel, because bypass diodes carry it past the others [A].
    [[nodiscard]] double short_circuit_current_a(std::size_t string) const;
    /// The lowest of any of its panels, without rear light [A].
    [[nodiscard]] double least_current_a(std::size_t string) const;
    /// Whether the string has a blocking diode: all of its groups state one.
    [[nodiscard]] bool is_blocked(std::size_t string) const;

    [[nodiscard]] MixedArray array(PanelState state) const;
    /// All panels at one irradiance and cell temperature.
    [[nodiscard]] MixedArrayCurve curve(PanelState state, double irradiance_w_m2,
                                        double cell_temperature_c) const;
};

/// The array of a layout over the groups of an installation. Throws InvalidInput for a group that
/// is not listed, more panels than it has, or a bracket.
[[nodiscard]] UnlikeArray unlike_array(const Layout& layout, const Installation& installation,
                                       const Parts& parts, std::string_view part);

}  // namespace heatmatch
