#pragma once

#include <optional>

#include "heatmatch/parts/ampacity_table.hpp"

namespace heatmatch {

/// What the air around it leaves of a current that a column of a table shows for a conductor of
/// `conductor_c` in `base_c` air: the factor of the code's table, whose rows count up to their
/// upper end; where no row was published for that column, the code's own equation
/// `sqrt((Tc - Ta)/(Tc - Ta0))`. 0 where that air allows nothing.
/// @cite nec-310-15-ambient @cite nec-690-31 @cite iec-60364-5-52 @cite en-50618
[[nodiscard]] double ambient_factor(WiringCode code, double base_c, double conductor_c,
                                    double ambient_c);

/// The same where the conductor may get no hotter than `limit_c`, cooler than the column's:
/// `sqrt((Tl - Ta)/(Tc - Ta0))` where that is less. @cite nec-310-15-ambient
[[nodiscard]] double ambient_factor(WiringCode code, const TabulatedAmpacity& table, double limit_c,
                                    double ambient_c);

/// What is left to each of so many conductors under load that lie together, those of one circuit
/// being two. By the NEC up to three count as the table has it; by IEC a row between two is the
/// next, and more than twenty circuits have none. @cite nec-310-reproduction @cite iec-60364-5-52
[[nodiscard]] std::optional<double> grouping_factor(WiringCode code, int loaded_conductors);

/// A raceway that close above a roof in the sun counts as in hotter air. The edition of 2023 has
/// 19 mm, those of 2017 and 2020 had 23 mm: the larger holds for all. @cite nec-310-15-roof
inline constexpr double near_roof_mm = 23.0;
inline constexpr double near_roof_rise_k = 33.0;

/// Kelvin by which the air in a raceway counts as hotter so far above a roof in the sun.
[[nodiscard]] double roof_rise_k(double distance_mm);

}  // namespace heatmatch
