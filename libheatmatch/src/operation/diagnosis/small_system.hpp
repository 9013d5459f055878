#pragma once

#include <vector>

namespace heatmatch {

using SmallMatrix = std::vector<std::vector<double>>;

/// Solves a small system by elimination with pivots; false if it is singular.
[[nodiscard]] bool solve_small(SmallMatrix a, std::vector<double> b, std::vector<double>& x);

}  // namespace heatmatch
