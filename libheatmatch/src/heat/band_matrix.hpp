#pragma once

#include <cstddef>
#include <span>

namespace heatmatch {

/// A symmetric positive matrix of which only a band beside the diagonal is not zero: row by row the
/// diagonal and `width` entries right of it. Takes it apart into L D L^T in place.
void factor_band(std::span<double> matrix, std::size_t rows, std::size_t width);

/// Solves for a right-hand side in place, once factored.
void solve_band(std::span<const double> factored, std::size_t width, std::span<double> x);

}  // namespace heatmatch
