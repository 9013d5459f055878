#pragma once

#include <array>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "heatmatch/base/choice.hpp"
#include "heatmatch/base/sentence.hpp"
#include "heatmatch/parts/class_defaults.hpp"
#include "heatmatch/parts/panel.hpp"
#include "heatmatch/solar/single_diode.hpp"

namespace heatmatch {

/// How the label values are met.
enum class FitMode {
    exact,  //!< all five values of De Soto
    split,  //!< i_sc, v_oc, v_mp i_mp, alpha and beta met; v_mp and i_mp shifted
    gap     //!< the same, with a fitted band gap and no series resistance
};
inline constexpr auto fit_mode_words = std::to_array<std::string_view>({"exact", "split", "gap"});
[[nodiscard]] constexpr std::span<const std::string_view> words_of(FitMode) {
    return fit_mode_words;
}

/// The values of a label; coefficients relative, in 1/K.
struct LabelValues {
    double v_oc = 0.0;         //!< [V]
    double i_sc = 0.0;         //!< [A]
    double v_mp = 0.0;         //!< [V]
    double i_mp = 0.0;         //!< [A]
    double alpha_per_k = 0.0;  //!< of i_sc [1/K]
    double beta_per_k = 0.0;   //!< of v_oc [1/K]
    double gamma_per_k = 0.0;  //!< of v_mp i_mp [1/K]
    double band_gap_ev = silicon_band_gap_ev;
};

/// A single diode, with the quality of its fit to the label.
struct DatasheetFit : SingleDiode {
    FitMode fit_mode = FitMode::exact;
    double vmp_shift = 0.0;          //!< relative move of v_mp from the label; i_mp the inverse
    double gamma_error_per_k = 0.0;  //!< difference between model and label [1/K]
    bool series_resistance_clamped = false;  //!< gamma required more than 0.012/K
    Sentences warnings{};                    //!< unusual label values
    std::vector<Assumption> assumed{};       //!< class defaults used
};

/// Reason why a label does not describe a diode.
struct FitRefusal {
    std::string field{};
    Sentence reason{};
};

/// Fits the five parameters of De Soto to a label: given (a, Rs) the three points at STC are linear
/// in I0 and Gsh; dP/dV = 0 at the maximum gives Rs, beta gives a, each by a bracketed root; the
/// solution is unique where it exists. Where the split of power into v_mp and i_mp is impossible
/// for a diode of that beta, i_sc, v_oc, power, alpha and beta are met and the shift is reported.
/// With use_gamma the series resistance depends on temperature so that gamma is met (`Rs(T) = Rs (1
/// + rho (T - 25))`, |rho| <= 0.012/K); without it, the model is that of De Soto. Refused:
/// non-positive values, i_mp >= i_sc, v_mp >= v_oc, v_mp/v_oc + i_mp/i_sc <= 1, v_mp/v_oc <= 0.5.
/// @cite de-soto-2006 @cite dobos-2012
[[nodiscard]] std::variant<DatasheetFit, FitRefusal> fit_label(const LabelValues& label,
                                                               bool use_gamma = true);

/// The same for a panel of the catalog, completed with class defaults. Throws InvalidInput.
[[nodiscard]] DatasheetFit fit_single_diode(const Panel& panel, bool use_gamma = true);

/// The published six-parameter fit of a panel as a single diode, its coefficients adjusted as in
/// the CEC model (alpha (1 - Adjust/100)). Throws InvalidInput if the panel has none. @cite
/// dobos-2012
[[nodiscard]] SingleDiode listed_single_diode(const Panel& panel);

}  // namespace heatmatch
