#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "heatmatch/base/field.hpp"

namespace heatmatch {

/// A meter reading on an owned panel, with irradiance and temperature at that time.
struct PanelMeasurement {
    std::optional<double> v_oc{};      //!< [V]
    std::optional<double> i_sc{};      //!< [A]
    double irradiance_w_m2 = 1000.0;   //!< on the panel [W/m2]
    double cell_temperature_c = 25.0;  //!< back of the panel plus 2 K [°C]

    friend bool operator==(const PanelMeasurement&, const PanelMeasurement&) = default;
};
[[nodiscard]] std::span<const Field> panel_measurement_fields();

/// Numbers of a table of shade by month and hour.
inline constexpr std::size_t shades_by_hour = 288;

/// Panels of one kind that the user owns and that may share one string or array.
struct OwnedPanels {
    std::string group{};  //!< name given by the user
    std::string panel{};  //!< id
    int count = 1;
    std::optional<double> age_years{};   //!< [a]
    std::optional<bool> rear_blocked{};  //!< a wall or a roof is behind them; not stated: open
    /// Of their plane; not stated: that of the site [deg].
    std::optional<double> tilt_deg{};
    std::optional<double> azimuth_deg{};
    /// Share of their irradiance lost to shade, direct and diffuse [%]: one number, 12 by month, or
    /// 288 by month and hour of mean solar time, January's 24 hours first. Not stated: none.
    std::vector<double> shade_pct{};
    /// Substrings of each panel under the shade; not stated: all of them, which gives least heat.
    std::optional<int> shaded_substrings{};
    /// Of each panel as owned, one a substring; not stated: of its kind.
    std::optional<int> bypass_diodes{};
    /// Whether each string has a blocking diode, of 0.5 V; not stated: none.
    std::optional<bool> blocking{};
    std::optional<PanelMeasurement> measured{};
    std::string notes{};

    /// Whether their weather differs from that of the site's plane.
    [[nodiscard]] bool has_own_weather() const {
        return tilt_deg || azimuth_deg || !shade_pct.empty();
    }

    friend bool operator==(const OwnedPanels&, const OwnedPanels&) = default;
};
[[nodiscard]] std::span<const Field> owned_panels_fields();

/// Checks all fields and across fields: a measurement has a voltage or a current. `part` starts the
/// message. Throws InvalidInput.
void check_owned_panels(const OwnedPanels& owned, const std::string& part);

/// Elements of the catalog that may be bought.
struct ElementFilter {
    std::vector<std::string> family{};    //!< any of these; empty: all
    std::optional<double> price_max{};    //!< for one element, by the typical price
    std::optional<double> rated_v_min{};  //!< [V]
    std::optional<double> rated_w_max{};  //!< [W]

    friend bool operator==(const ElementFilter&, const ElementFilter&) = default;
};
[[nodiscard]] std::span<const Field> element_filter_fields();

/// Elements that the user owns (`element`), or may buy (`any`).
struct AllowedElements {
    std::string element{};  //!< id; empty where `any` is given
    std::optional<ElementFilter> any{};
    int count = 1;  //!< largest number of a kind in one bank

    friend bool operator==(const AllowedElements&, const AllowedElements&) = default;
};
[[nodiscard]] std::span<const Field> allowed_elements_fields();

/// Checks all fields and across fields: an element, or a filter instead. Throws InvalidInput.
void check_allowed_elements(const AllowedElements& allowed, const std::string& part);

}  // namespace heatmatch
