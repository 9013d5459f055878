#pragma once

#include <optional>
#include <span>
#include <string>

#include "heatmatch/base/field.hpp"
#include "heatmatch/base/provenance.hpp"

namespace heatmatch {

/// A resistive heating element. Its resistance is `measured_resistance_ohm`, else `resistance_ohm`,
/// else computed from rated volts and watts.
struct Element {
    std::string id{};
    std::string label{};
    std::string family{};                               //!< intended use
    std::optional<double> rated_v{};                    //!< [V]
    std::optional<double> rated_w{};                    //!< at rated_v [W]
    std::optional<double> resistance_ohm{};             //!< printed, cold [ohm]
    std::optional<double> measured_resistance_ohm{};    //!< by the owner's meter, cold [ohm]
    std::optional<double> power_tolerance_plus_pct{};   //!< of rated power [%]
    std::optional<double> power_tolerance_minus_pct{};  //!< of rated power [%]
    std::string alloy{};                                //!< of the coil
    std::string sheath{};
    std::optional<double> sheath_diameter_mm{};  //!< [mm]
    std::optional<double> heated_length_mm{};    //!< of the whole element [mm]
    std::optional<int> legs{};                   //!< parallel lengths into which it is bent
    std::optional<double> leg_spacing_mm{};      //!< between neighbouring legs [mm]
    std::optional<double> cold_length_mm{};      //!< unheated, at each end [mm]
    std::string terminal{};                      //!< kind
    std::optional<double> terminal_limit_c{};    //!< [°C]
    std::string intended_medium{};
    std::optional<double> insulation_resistance_mohm{};  //!< sheath to coil, measured cold [Mohm]
    std::optional<bool> built_in_ac_control{};           //!< thermostat or cut-out inside
    std::optional<bool> rated_dc{};                      //!< rated_v is a DC voltage
    Provenance provenance{};
    Price price{};  //!< per piece
    std::string notes{};

    friend bool operator==(const Element&, const Element&) = default;
    /// Rated power per heated surface [W/cm2]; empty if a length is unknown.
    [[nodiscard]] std::optional<double> watt_density_w_cm2() const;
};

/// Whether it is made to heat a liquid, by its family or its medium (`water`).
[[nodiscard]] bool is_made_for_liquid(const Element& element);

/// The field table of an element.
[[nodiscard]] std::span<const Field> element_fields();

/// Checks across fields: the resistance is determined, and measured or printed resistance agrees
/// with rated volts and watts within 25 %. Throws InvalidInput.
void check_element(const Element& element);

}  // namespace heatmatch
