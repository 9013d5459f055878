#pragma once

#include "reading_fit.hpp"

namespace heatmatch {

/// Of one row: a residual for every quantity, one for the cells' temperature, one for the sun.
inline constexpr std::size_t row_residuals = quantities + 2;
using RowResiduals = std::array<double, row_residuals>;

/// Residuals of a row, robust beyond three errors: what is not measured of sun and cells is hardly
/// held, so that the readings decide.
[[nodiscard]] RowResiduals residuals_of(const Plant& plant, const FitRow& row,
                                        const SunAndCells& state);
[[nodiscard]] double square(const RowResiduals& r);

}  // namespace heatmatch
