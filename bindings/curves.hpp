#pragma once

#include "pybind.hpp"

#include <cmath>

#include "heatmatch/solar/array.hpp"

namespace heatmatch::python {

/// Operating points as arrays of one shape.
struct OperatingPoints {
    py::array_t<double> voltage_v;
    py::array_t<double> current_a;
    py::array_t<double> power_w;
};

template <class Curve>
py::object into_resistance(const Curve& curve, const py::object& resistance_ohm) {
    const DoubleArray in = numbers_from(resistance_ohm, "resistance_ohm");
    constexpr Range allowed{.low = 0.0};
    for (py::ssize_t i = 0; i < in.size(); ++i) {
        if (!std::isnan(in.data()[i]))
            check_argument("resistance_ohm", in.data()[i], unit::ohm, allowed);
    }
    if (in.ndim() == 0) return py::cast(curve.into_resistance(*in.data()));
    const std::vector<py::ssize_t> shape(in.shape(), in.shape() + in.ndim());
    OperatingPoints points{py::array_t<double>(shape), py::array_t<double>(shape),
                           py::array_t<double>(shape)};
    const double* ohms = in.data();
    double* volts = points.voltage_v.mutable_data();
    double* amperes = points.current_a.mutable_data();
    double* watts = points.power_w.mutable_data();
    const py::ssize_t size = in.size();
    {
        const py::gil_scoped_release release;
        for (py::ssize_t i = 0; i < size; ++i) {
            const OperatingPoint point = curve.into_resistance(ohms[i]);
            volts[i] = point.voltage_v;
            amperes[i] = point.current_a;
            watts[i] = point.power_w;
        }
    }
    return py::cast(std::move(points));
}

/// Checks a sun and a cell temperature. Throws InvalidInput.
inline void check_condition(double irradiance_w_m2, double cell_temperature_c) {
    check_argument("irradiance_w_m2", irradiance_w_m2, unit::watt_per_m2,
                   {.low = 0.0, .high = 3000.0});
    check_argument("cell_temperature_c", cell_temperature_c, unit::celsius,
                   {.low = -90.0, .high = 150.0});
}

/// A diode's parameters as a tuple, for pickles, and back.
[[nodiscard]] py::tuple diode_state(const SingleDiode& diode);
[[nodiscard]] SingleDiode diode_from(const py::tuple& state);

}  // namespace heatmatch::python
