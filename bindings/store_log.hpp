#pragma once

#include "pybind.hpp"

#include "heatmatch/operation/calibration/store_log.hpp"

namespace heatmatch::python {

[[nodiscard]] py::tuple state_of(const Probe& probe);
[[nodiscard]] Probe probe_from(const py::tuple& state);

}  // namespace heatmatch::python
