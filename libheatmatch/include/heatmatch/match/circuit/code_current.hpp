#pragma once

#include <algorithm>

#include "heatmatch/solar/single_diode.hpp"

namespace heatmatch {

/// The current of a source circuit is continuous: its parts are rated for this factor times the
/// short-circuit current at 1000 W/m2. @cite nec-690-8
inline constexpr double lasting_current_factor = 1.25;

/// Factor on the short-circuit current for a table of ampacities before correction: the factor
/// twice. @cite nec-690-8
inline constexpr double table_current_factor = lasting_current_factor * lasting_current_factor;

/// Continuous current from that short-circuit current at 1000 W/m2: with the factor, and with a
/// brighter irradiance where there is one [A]. @cite nec-690-8
[[nodiscard]] inline double lasting_current_a(double short_circuit_a,
                                              double irradiance_w_m2 = stc_irradiance_w_m2) {
    return lasting_current_factor * short_circuit_a *
           std::max(1.0, irradiance_w_m2 / stc_irradiance_w_m2);
}

}  // namespace heatmatch
