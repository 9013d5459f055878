#pragma once

#include <optional>

#include "heatmatch/solar/datasheet_fit.hpp"

namespace heatmatch {

/// The dimensionless label: v = Vmp/Voc, i = Imp/Isc.
struct ScaledLabel {
    double v = 0.0;
    double i = 0.0;
    double alpha = 0.0;
    double beta = 0.0;
    double kappa = 0.0;  //!< d ln I0 / dT [1/K]
};

/// Normalised parameters: A = a/Voc, r = Rs Isc/Voc, g = Gsh Voc/Isc, j = I0 exp(Voc/a)/Isc.
struct ScaledDiode {
    double a = 0.0;
    double r = 0.0;
    double g = 0.0;
    double j = 0.0;
};

/// d ln I0 / dT of a band gap at 25 °C [1/K]: `3/T0 + Eg/(k T0²) - Eg C/(k T0)`.
[[nodiscard]] double kappa_of(double band_gap_ev);
/// The band gap that has this kappa [eV].
[[nodiscard]] double band_gap_of(double kappa_per_k);

/// All five equations of De Soto, or empty if no diode satisfies them. @cite de-soto-2006
[[nodiscard]] std::optional<ScaledDiode> exact_solution(const ScaledLabel& label);

/// Isc, Voc, Pmp, alpha and beta without a shunt; shifts the label's v and i to the resulting
/// maximum. In gap mode there is no series resistance either, and kappa is free.
[[nodiscard]] ScaledDiode split_solution(ScaledLabel& label, FitMode& mode);

/// gamma of the model at 25 °C [1/K], by the envelope theorem: only explicit changes count.
[[nodiscard]] double model_gamma(const ScaledLabel& label, const ScaledDiode& diode);

}  // namespace heatmatch
