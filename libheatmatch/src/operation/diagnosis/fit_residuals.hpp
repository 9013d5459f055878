#pragma once

#include "reading_fit.hpp"

namespace heatmatch {

/// For one row: a residual for every quantity, one for the cell temperature, one for the
/// irradiance.
inline constexpr std::size_t row_residuals = quantities + 2;
using RowResiduals = std::array<double, row_residuals>;

/// Residuals of a row, robust beyond three errors. Unmeasured irradiance and cell temperature are
/// weakly constrained, so that the readings decide.
[[nodiscard]] RowResiduals residuals_of(const Plant& plant, const FitRow& row,
                                        const SunAndCells& state);
[[nodiscard]] double square(const RowResiduals& r);

}  // namespace heatmatch
