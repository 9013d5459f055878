#pragma once

#include "pybind.hpp"

#include <span>

#include "heatmatch/setting/site.hpp"

namespace heatmatch::python {

/// The numbers of a list or an array of one dimension. Throws InvalidInput naming it.
[[nodiscard]] std::span<const double> row_numbers(const DoubleArray& array, const char* name);

/// Twelve monthly means from three lists.
[[nodiscard]] MonthlyNormals normals_from(const py::object& sun_hours, const py::object& temp_min_c,
                                          const py::object& temp_max_c);

}  // namespace heatmatch::python
