#pragma once

#include "pybind.hpp"

#include "heatmatch/solar/weather.hpp"

namespace heatmatch::python {

/// A weather with its sky as plain data, for pickles, and back.
[[nodiscard]] py::tuple weather_state(const Weather& weather);
[[nodiscard]] Weather weather_from(const py::tuple& state);

}  // namespace heatmatch::python
