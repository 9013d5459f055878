#pragma once

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "heatmatch/base/choice.hpp"
#include "heatmatch/base/field.hpp"
#include "heatmatch/base/provenance.hpp"

namespace heatmatch {

/// Kind of photovoltaic cell.
enum class Technology { mono_si, multi_si, heterojunction, cdte, cigs, cis, a_si, gaas };
inline constexpr auto technology_words = std::to_array<std::string_view>(
    {"mono-Si", "multi-Si", "heterojunction", "CdTe", "CIGS", "CIS", "a-Si", "GaAs"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(Technology) {
    return technology_words;
}

/// Single-diode parameters published with a module rating, at 1000 W/m2 and 25 °C; kept beside the
/// fit to the label values. `adjust_pct` changes the coefficients of the CEC model. @cite
/// dobos-2012
struct ListedFit {
    double light_current_a = 0.0;        //!< [A]
    double saturation_current_a = 0.0;   //!< [A]
    double series_resistance_ohm = 0.0;  //!< [ohm]
    double shunt_resistance_ohm = 0.0;   //!< [ohm]
    double modified_ideality_v = 0.0;    //!< n Ns k T / q at 25 °C [V]
    double adjust_pct = 0.0;             //!< [%]
    double band_gap_ev = 1.121;          //!< the list uses the value of silicon for all cells
    double band_gap_per_k = -0.0002677;  //!< relative change of the gap [1/K]

    friend bool operator==(const ListedFit&, const ListedFit&) = default;
};

/// A photovoltaic panel as on its label or datasheet, at 1000 W/m2, 25 °C, AM 1.5 (STC).
struct Panel {
    std::string id{};
    std::string label{};
    std::optional<Technology> technology{};
    double v_oc = 0.0;                            //!< open-circuit voltage [V]
    double i_sc = 0.0;                            //!< short-circuit current [A]
    std::optional<double> v_mp{};                 //!< voltage at maximum power [V]
    std::optional<double> i_mp{};                 //!< current at maximum power [A]
    std::optional<double> alpha_isc_pct_per_k{};  //!< of i_sc [%/K]
    std::optional<double> beta_voc_pct_per_k{};   //!< of v_oc [%/K]
    std::optional<double> gamma_pmp_pct_per_k{};  //!< of v_mp i_mp [%/K]
    std::optional<double> noct_c{};               //!< cell at 800 W/m2, 20 °C air, 1 m/s [°C]
    std::optional<int> cells_in_series{};         //!< not used by the fit
    std::optional<int> bypass_diodes{};
    std::optional<double> max_system_voltage_v{};  //!< [V]
    std::optional<double> max_series_fuse_a{};     //!< [A]
    std::optional<double> power_tolerance_pct{};   //!< plus or minus [%]
    std::optional<double> bifaciality{};           //!< rear to front power
    std::optional<double> i_sc_bnpi{};             //!< i_sc with 135 W/m2 on the back as well [A]
    std::optional<double> i_sc_bsi{};              //!< i_sc with 300 W/m2 on the back as well [A]
    std::optional<double> area_m2{};               //!< [m2]
    std::optional<ListedFit> listed_fit{};
    Provenance provenance{};
    Price price{};  //!< per piece
    std::string notes{};

    friend bool operator==(const Panel&, const Panel&) = default;
};

/// The field table of a panel.
[[nodiscard]] std::span<const Field> panel_fields();

/// Checks across fields: v_mp < v_oc, i_mp < i_sc and the conditions for a diode with these values
/// (v_mp/v_oc > 0.5, v_mp/v_oc + i_mp/i_sc > 1). Throws InvalidInput.
void check_panel(const Panel& panel);

}  // namespace heatmatch
