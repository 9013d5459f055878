#include "docs_classes.hpp"
#include "docs_heat.hpp"
#include "pybind.hpp"

#include "heatmatch/heat/element_resistance.hpp"
#include "heatmatch/heat/wire_temperature.hpp"

namespace heatmatch::python {

void register_heat(py::module_& module) {
    py::class_<ConductorTemperature>(module, "ConductorTemperature",
                                     docs::class_conductor_temperature)
        .def_readonly("conductor_c", &ConductorTemperature::conductor_c,
                      "Temperature of the conductor [°C].")
        .def_readonly("surface_c", &ConductorTemperature::surface_c,
                      "Temperature of the insulation's outer surface [°C].")
        .def_readonly("runaway", &ConductorTemperature::runaway,
                      "Whether there is no steady state, or one above 1500 °C; both temperatures "
                      "are then lower bounds.")
        .def_property_readonly(
            "assumed", [](const ConductorTemperature& t) { return texts_of(t.assumed); },
            "Assumptions, one sentence each.")
        .def("__repr__",
             [](const ConductorTemperature& t) {
                 return "ConductorTemperature(conductor_c=" + format_number(t.conductor_c, 4) +
                        ", surface_c=" + format_number(t.surface_c, 4) +
                        (t.runaway ? ", runaway=True)" : ")");
             })
        .def(py::pickle(
            [](const ConductorTemperature& t) {
                return py::make_tuple(t.conductor_c, t.surface_c, t.runaway,
                                      assumption_states(t.assumed));
            },
            [](const py::tuple& state) {
                return ConductorTemperature{state[0].cast<double>(), state[1].cast<double>(),
                                            state[2].cast<bool>(), assumptions_from(state[3])};
            }));
    module.def(
        "conductor_temperature",
        [](const Wire& wire, double current_a, const Surroundings& surroundings,
           const std::optional<Insulation>& insulation) {
            check_argument("current_a", current_a, unit::ampere, {.low = 0.0, .high = 1e5});
            return conductor_temperature(wire, insulation ? &*insulation : nullptr, current_a,
                                         surroundings);
        },
        py::arg("wire"), py::kw_only(), py::arg("current_a"), py::arg("surroundings"),
        py::arg("insulation") = std::nullopt, docs::conductor_temperature);
    py::class_<ElementResistance>(module, "ElementResistance", docs::class_element_resistance)
        .def_readonly("low_ohm", &ElementResistance::low_ohm, "Low end of the resistance [ohm].")
        .def_readonly("typical_ohm", &ElementResistance::typical_ohm, "Typical resistance [ohm].")
        .def_readonly("high_ohm", &ElementResistance::high_ohm, "High end of the resistance [ohm].")
        .def_readonly("basis", &ElementResistance::basis,
                      "Origin of the resistance: \"measured\", \"printed\" or \"volts and watts\".")
        .def_readonly("fixed", &ElementResistance::fixed,
                      "Whether one resistance describes the element; False for lamps and PTC.")
        .def_property_readonly(
            "assumed", [](const ElementResistance& r) { return texts_of(r.assumed); },
            "Assumptions, one sentence each.")
        .def("__repr__",
             [](const ElementResistance& r) {
                 return "ElementResistance(low_ohm=" + format_number(r.low_ohm, 4) +
                        ", typical_ohm=" + format_number(r.typical_ohm, 4) +
                        ", high_ohm=" + format_number(r.high_ohm, 4) + ')';
             })
        .def(py::pickle(
            [](const ElementResistance& r) {
                return py::make_tuple(r.low_ohm, r.typical_ohm, r.high_ohm, text_of_choice(r.basis),
                                      r.fixed, assumption_states(r.assumed));
            },
            [](const py::tuple& state) {
                return ElementResistance{state[0].cast<double>(), state[1].cast<double>(),
                                         state[2].cast<double>(), state[3].cast<ResistanceBasis>(),
                                         state[4].cast<bool>(),   assumptions_from(state[5])};
            }));
    module.def(
        "element_resistance",
        [](const Element& element, const std::optional<Alloy>& alloy, double coil_temperature_c) {
            check_argument("coil_temperature_c", coil_temperature_c, unit::celsius,
                           {.low = -60.0, .high = 3000.0});
            return element_resistance(element, alloy ? &*alloy : nullptr, coil_temperature_c);
        },
        py::arg("element"), py::kw_only(), py::arg("alloy") = std::nullopt,
        py::arg("coil_temperature_c") = 300.0, docs::element_resistance);
}

}  // namespace heatmatch::python
