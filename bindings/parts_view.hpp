#pragma once

#include "pybind.hpp"

#include "heatmatch/catalog/catalog.hpp"

namespace heatmatch::python {

/// Gives the catalog one mapping a kind: `catalog.panels` and so on.
void add_parts_views(py::class_<Catalog>& cls);

}  // namespace heatmatch::python
