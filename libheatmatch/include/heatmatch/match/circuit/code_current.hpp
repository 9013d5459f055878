#pragma once

#include <algorithm>

#include "heatmatch/solar/single_diode.hpp"

namespace heatmatch {

/// The current of a source circuit lasts: what carries it is rated for that many times its
/// short-circuit current at 1000 W/m2. @cite nec-690-8
inline constexpr double lasting_current_factor = 1.25;

/// A table of ampacities before correction has to show that many times the short-circuit current:
/// the factor twice. @cite nec-690-8
inline constexpr double table_current_factor = lasting_current_factor * lasting_current_factor;

/// What lasts of that short-circuit current at 1000 W/m2: the factor, and the sun where it is
/// brighter than that [A]. @cite nec-690-8
[[nodiscard]] inline double lasting_current_a(double short_circuit_a,
                                              double irradiance_w_m2 = stc_irradiance_w_m2) {
    return lasting_current_factor * short_circuit_a *
           std::max(1.0, irradiance_w_m2 / stc_irradiance_w_m2);
}

}  // namespace heatmatch
