#pragma once

namespace heatmatch {

/// The current of a source circuit lasts: what carries it is rated for that many times its
/// short-circuit current at 1000 W/m2. @cite nec-690-8
inline constexpr double lasting_current_factor = 1.25;

/// A table of ampacities before correction has to show that many times the short-circuit current:
/// the factor twice. @cite nec-690-8
inline constexpr double table_current_factor = lasting_current_factor * lasting_current_factor;

}  // namespace heatmatch
