#pragma once

#include <vector>

namespace heatmatch {

/// One point of a table of a quantity over temperature.
struct TablePoint {
    double t_c = 0.0;    //!< temperature [°C]
    double value = 0.0;  //!< in the unit of the table's field

    friend bool operator==(const TablePoint&, const TablePoint&) = default;
};

/// Piecewise linear value of a table at a temperature; constant beyond its ends. The table must be
/// sorted by temperature; for an empty table the result is `otherwise`.
[[nodiscard]] double interpolate(const std::vector<TablePoint>& table, double t_c,
                                 double otherwise);

/// Largest value of a table between two temperatures, `otherwise` for an empty one.
[[nodiscard]] double largest_between(const std::vector<TablePoint>& table, double t_low_c,
                                     double t_high_c, double otherwise);

}  // namespace heatmatch
