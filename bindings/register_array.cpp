#include "curves.hpp"
#include "docs_classes.hpp"
#include "docs_curves.hpp"

#include "heatmatch/solar/array.hpp"
#include "heatmatch/solar/datasheet_fit.hpp"

namespace heatmatch::python {

void register_array(py::module_& module) {
    py::class_<ArrayCurve>(module, "ArrayCurve", docs::class_array_curve)
        .def_readonly("series", &ArrayCurve::series, "Number of panels in series in each string.")
        .def_readonly("parallel", &ArrayCurve::parallel, "Number of strings in parallel.")
        .def(
            "current_a",
            [](const ArrayCurve& curve, const py::object& voltage_v) {
                return map_numbers(voltage_v, "voltage_v",
                                   [&curve](double v) { return curve.current_a(v); });
            },
            py::arg("voltage_v"), docs::curve_current_a)
        .def(
            "voltage_v",
            [](const ArrayCurve& curve, const py::object& current_a) {
                return map_numbers(current_a, "current_a",
                                   [&curve](double i) { return curve.voltage_v(i); });
            },
            py::arg("current_a"), docs::curve_voltage_v)
        .def("into_resistance", &into_resistance<ArrayCurve>, py::arg("resistance_ohm"),
             docs::curve_into_resistance)
        .def("maximum_power", &ArrayCurve::maximum_power, docs::curve_maximum_power)
        .def_property_readonly("open_circuit_voltage_v", &ArrayCurve::open_circuit_voltage_v,
                               "Open-circuit voltage [V].")
        .def_property_readonly("short_circuit_current_a", &ArrayCurve::short_circuit_current_a,
                               "Short-circuit current [A].")
        .def("__repr__",
             [](const ArrayCurve& curve) {
                 return "ArrayCurve(" + std::to_string(curve.series) + 'S' +
                        std::to_string(curve.parallel) + "P, open_circuit_voltage_v=" +
                        format_number(curve.open_circuit_voltage_v()) + ')';
             })
        .def(py::pickle(
            [](const ArrayCurve& curve) {
                return py::make_tuple(py::cast(curve.panel), curve.series, curve.parallel,
                                      curve.drop_v);
            },
            [](const py::tuple& state) {
                return ArrayCurve{state[0].cast<DiodeCurve>(), state[1].cast<int>(),
                                  state[2].cast<int>(), state[3].cast<double>()};
            }));
    py::class_<Array>(module, "Array")
        .def_static("uniform", &Array::uniform, py::arg("panel"), py::kw_only(),
                    py::arg("series") = 1, py::arg("parallel") = 1)
        .def_static(
            "uniform",
            [](const Panel& panel, int series, int parallel) {
                return Array::uniform(fit_single_diode(panel), series, parallel);
            },
            py::arg("panel"), py::kw_only(), py::arg("series") = 1, py::arg("parallel") = 1)
        .def_readonly("panel", &Array::panel, "One of the panels, as a single diode.")
        .def_readonly("series", &Array::series, "Number of panels in series in each string.")
        .def_readonly("parallel", &Array::parallel, "Number of strings in parallel.")
        .def("__repr__",
             [](const Array& array) {
                 return "Array(" + std::to_string(array.series) + 'S' +
                        std::to_string(array.parallel) + "P)";
             })
        .def(
            "at",
            [](const Array& array, double irradiance_w_m2, double cell_temperature_c) {
                check_condition(irradiance_w_m2, cell_temperature_c);
                return array.at(irradiance_w_m2, cell_temperature_c);
            },
            py::kw_only(), py::arg("irradiance_w_m2"), py::arg("cell_temperature_c"))
        .def(py::pickle(
            [](const Array& array) {
                return py::make_tuple(diode_state(array.panel), array.series, array.parallel);
            },
            [](const py::tuple& state) {
                return Array{diode_from(state[0].cast<py::tuple>()), state[1].cast<int>(),
                             state[2].cast<int>()};
            }));
}

}  // namespace heatmatch::python
