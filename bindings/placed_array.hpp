#pragma once

#include "pybind.hpp"

#include "heatmatch/solar/energy_curve.hpp"

namespace heatmatch::python {

/// An array of unlike panels as plain data, for pickles, and back.
[[nodiscard]] py::list mixed_array_state(const MixedArray& array);
[[nodiscard]] MixedArray mixed_array_from(const py::handle& state);

/// Whether it is an array, of equal or unlike panels.
[[nodiscard]] bool is_array(const py::object& object);

/// An array with the weather of its panels: one Weather, or one a panel, string by string. Throws
/// InvalidInput.
[[nodiscard]] PlacedArray placed_array(const py::object& array, const py::object& weather,
                                       const NodeOptions& options,
                                       const std::optional<double>& noct_c);

[[nodiscard]] py::tuple placed_array_state(const PlacedArray& placed);
[[nodiscard]] PlacedArray placed_array_from(const py::tuple& state);

/// Nodes as plain data, for pickles, and back.
[[nodiscard]] py::tuple nodes_state(const WeatherNodes& nodes);
[[nodiscard]] WeatherNodes nodes_from(const py::tuple& state);

}  // namespace heatmatch::python
