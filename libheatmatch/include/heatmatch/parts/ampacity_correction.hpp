#pragma once

#include <optional>

#include "heatmatch/parts/ampacity_table.hpp"

namespace heatmatch {

/// Ambient correction of a tabulated current, for a column with conductor temperature `conductor_c`
/// at an ambient of `base_c`: the factor of the code's table, each row valid up to its upper end.
/// Where no row was published for that column, the code's own equation `sqrt((Tc - Ta)/(Tc -
/// Ta0))`. 0 where that ambient permits no current. @cite nec-310-15-ambient @cite nec-690-31 @cite
/// iec-60364-5-52 @cite en-50618
[[nodiscard]] double ambient_factor(WiringCode code, double base_c, double conductor_c,
                                    double ambient_c);

/// The same with a conductor limit `limit_c` below that of the column: `sqrt((Tl - Ta)/(Tc - Ta0))`
/// where that is less. @cite nec-310-15-ambient
[[nodiscard]] double ambient_factor(WiringCode code, const TabulatedAmpacity& table, double limit_c,
                                    double ambient_c);

/// Factor for that number of loaded conductors lying together; those of one circuit are two. By the
/// NEC up to three have the table value; by IEC a number between two rows has the next row, and
/// more than twenty circuits have none. @cite nec-310-reproduction @cite iec-60364-5-52
[[nodiscard]] std::optional<double> grouping_factor(WiringCode code, int loaded_conductors);

/// Distance above a sunlit roof within which the air in a raceway counts as hotter. The edition of
/// 2023 has 19 mm, those of 2017 and 2020 had 23 mm: the larger covers all. @cite nec-310-15-roof
inline constexpr double near_roof_mm = 23.0;
inline constexpr double near_roof_rise_k = 33.0;

/// Temperature added to the air in a raceway at that distance above a sunlit roof [K].
[[nodiscard]] double roof_rise_k(double distance_mm);

}  // namespace heatmatch
