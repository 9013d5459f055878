#include "curves.hpp"
#include "docs_curves.hpp"
#include "docs_mixed_array.hpp"
#include "placed_array.hpp"

#include "heatmatch/solar/datasheet_fit.hpp"
#include "heatmatch/solar/mixed_array.hpp"

namespace heatmatch::python {

namespace {

/// A curve and what it was made of, for pickles.
struct HeldCurve {
    MixedArray array{};
    std::vector<PanelConditions> conditions{};
    MixedArrayCurve curve;

    HeldCurve(MixedArray made, std::vector<PanelConditions> given)
        : array(std::move(made)), conditions(std::move(given)), curve(array.at(conditions)) {}
    [[nodiscard]] OperatingPoint into_resistance(double resistance_ohm) const {
        return curve.into_resistance(resistance_ohm);
    }
};

py::tuple panel_state(const StringPanel& panel) {
    return py::make_tuple(diode_state(panel.diode), panel.substrings, panel.bypass, panel.bypass_v,
                          assumption_states(panel.assumed), panel.noct_c);
}

StringPanel panel_from(const py::tuple& state) {
    return {.diode = diode_from(state[0].cast<py::tuple>()),
            .substrings = state[1].cast<int>(),
            .bypass = state[2].cast<bool>(),
            .bypass_v = state[3].cast<double>(),
            .noct_c = state[5].cast<double>(),
            .assumed = assumptions_from(state[4])};
}

StringPanel checked_panel(StringPanel panel, std::optional<int> substrings,
                          std::optional<bool> bypass, double bypass_v) {
    if (substrings || bypass) panel.assumed.clear();
    panel.substrings = substrings.value_or(panel.substrings);
    panel.bypass = bypass.value_or(panel.bypass || substrings.has_value());
    panel.bypass_v = bypass_v;
    return MixedArray::of({{.panels = {panel}}}).strings.front().panels.front();
}

void register_points(py::module_& module) {
    py::class_<PanelPoint>(module, "PanelPoint", docs::class_panel_point)
        .def_readonly("voltage_v", &PanelPoint::voltage_v,
                      "Voltage at its terminals, negative where bypassed [V].")
        .def_readonly("current_a", &PanelPoint::current_a,
                      "Current of its string, negative if reversed [A].")
        .def_readonly("power_w", &PanelPoint::power_w,
                      "Power delivered, negative if the panel absorbs it [W].")
        .def_property_readonly("substrings_bypassed", &PanelPoint::substrings_bypassed,
                               "Number of substrings whose bypass diode conducts.")
        .def_readonly("bypassed", &PanelPoint::bypassed,
                      "Whether the bypass diode of each substring conducts.")
        .def_readonly("bypass_w", &PanelPoint::bypass_w, "Heat of its bypass diodes [W].")
        .def("__repr__",
             [](const PanelPoint& p) {
                 return "PanelPoint(voltage_v=" + format_number(p.voltage_v) +
                        ", current_a=" + format_number(p.current_a) +
                        ", substrings_bypassed=" + std::to_string(p.substrings_bypassed()) + ')';
             })
        .def(py::pickle(
            [](const PanelPoint& p) {
                return py::make_tuple(p.voltage_v, p.current_a, p.power_w, p.bypassed, p.bypass_w);
            },
            [](const py::tuple& state) {
                return PanelPoint{state[0].cast<double>(), state[1].cast<double>(),
                                  state[2].cast<double>(), state[3].cast<std::vector<bool>>(),
                                  state[4].cast<double>()};
            }));
    py::class_<StringPoint>(module, "StringPoint", docs::class_string_point)
        .def_readonly("current_a", &StringPoint::current_a, "Current, negative if reversed [A].")
        .def_readonly("blocking_w", &StringPoint::blocking_w, "Heat of its blocking diode [W].")
        .def_readonly("panels", &StringPoint::panels, "Operating points of its panels, in order.")
        .def("__repr__",
             [](const StringPoint& p) {
                 return "StringPoint(current_a=" + format_number(p.current_a) + ", " +
                        std::to_string(p.panels.size()) + " panels)";
             })
        .def(py::pickle(
            [](const StringPoint& p) {
                return py::make_tuple(p.current_a, p.blocking_w, p.panels);
            },
            [](const py::tuple& state) {
                return StringPoint{state[0].cast<double>(), state[1].cast<double>(),
                                   state[2].cast<std::vector<PanelPoint>>()};
            }));
    py::class_<ArrayPoint>(module, "ArrayPoint", docs::class_array_point)
        .def_readonly("total", &ArrayPoint::total, "Operating point of the array.")
        .def_readonly("strings", &ArrayPoint::strings, "Operating points of its strings, in order.")
        .def("__repr__",
             [](const ArrayPoint& p) {
                 return "ArrayPoint(voltage_v=" + format_number(p.total.voltage_v) +
                        ", current_a=" + format_number(p.total.current_a) +
                        ", power_w=" + format_number(p.total.power_w) + ", " +
                        std::to_string(p.strings.size()) + " strings)";
             })
        .def(py::pickle([](const ArrayPoint& p) { return py::make_tuple(p.total, p.strings); },
                        [](const py::tuple& state) {
                            return ArrayPoint{state[0].cast<OperatingPoint>(),
                                              state[1].cast<std::vector<StringPoint>>()};
                        }));
}

void register_mixed_curve(py::module_& module) {
    py::class_<HeldCurve>(module, "MixedArrayCurve", docs::class_mixed_array_curve)
        .def(
            "current_a",
            [](const HeldCurve& held, const py::object& voltage_v) {
                return map_numbers(voltage_v, "voltage_v", [&held](double v) {
                    check_argument("voltage_v", v, unit::volt, {.low = 0.0});
                    return held.curve.current_a(v);
                });
            },
            py::arg("voltage_v"), docs::curve_current_a)
        .def(
            "voltage_v",
            [](const HeldCurve& held, const py::object& current_a) {
                return map_numbers(current_a, "current_a",
                                   [&held](double i) { return held.curve.voltage_v(i); });
            },
            py::arg("current_a"), docs::curve_voltage_v)
        .def("into_resistance", &into_resistance<HeldCurve>, py::arg("resistance_ohm"),
             docs::curve_into_resistance)
        .def(
            "at_voltage",
            [](const HeldCurve& held, double voltage_v) {
                check_argument(
                    "voltage_v", voltage_v, unit::volt,
                    {.low = 0.0, .high = held.curve.open_circuit_voltage_v() * (1.0 + 1e-12)});
                return held.curve.at_voltage(voltage_v);
            },
            py::arg("voltage_v"), docs::mixed_array_curve_at_voltage)
        .def(
            "maximum_power", [](const HeldCurve& held) { return held.curve.maximum_power(); },
            docs::curve_maximum_power)
        .def(
            "power_maxima", [](const HeldCurve& held) { return held.curve.power_maxima(); },
            docs::power_maxima)
        .def_property_readonly(
            "sum_of_maxima_w", [](const HeldCurve& held) { return held.curve.sum_of_maxima_w(); },
            "Sum of the largest powers of all panels, each alone [W].")
        .def_property_readonly(
            "open_circuit_voltage_v",
            [](const HeldCurve& held) { return held.curve.open_circuit_voltage_v(); },
            "Open-circuit voltage [V].")
        .def_property_readonly(
            "short_circuit_current_a",
            [](const HeldCurve& held) { return held.curve.short_circuit_current_a(); },
            "Short-circuit current [A].")
        .def("__repr__",
             [](const HeldCurve& held) {
                 return "MixedArrayCurve(" + std::to_string(held.array.panel_count()) +
                        " panels, open_circuit_voltage_v=" +
                        format_number(held.curve.open_circuit_voltage_v()) + ')';
             })
        .def(py::pickle(
            [](const HeldCurve& held) {
                py::list conditions;
                for (const PanelConditions& each : held.conditions) {
                    conditions.append(
                        py::make_tuple(each.irradiance_w_m2, each.cell_temperature_c, each.shade));
                }
                return py::make_tuple(mixed_array_state(held.array), conditions);
            },
            [](const py::tuple& state) {
                std::vector<PanelConditions> conditions;
                for (const py::handle each : state[1]) {
                    const auto parts = each.cast<py::tuple>();
                    conditions.push_back({parts[0].cast<double>(), parts[1].cast<double>(),
                                          parts[2].cast<std::vector<double>>()});
                }
                return HeldCurve(mixed_array_from(state[0]), std::move(conditions));
            }));
}

}  // namespace

py::list mixed_array_state(const MixedArray& array) {
    py::list strings;
    for (const PanelString& string : array.strings) {
        py::list panels;
        for (const StringPanel& panel : string.panels) panels.append(panel_state(panel));
        strings.append(py::make_tuple(panels, string.blocking_v));
    }
    return strings;
}

MixedArray mixed_array_from(const py::handle& state) {
    MixedArray array;
    for (const py::handle string : state) {
        const auto parts = string.cast<py::tuple>();
        PanelString made{.blocking_v = parts[1].cast<std::optional<double>>()};
        for (const py::handle panel : parts[0]) {
            made.panels.push_back(panel_from(panel.cast<py::tuple>()));
        }
        array.strings.push_back(std::move(made));
    }
    return array;
}

void register_mixed_array(py::module_& module) {
    py::class_<StringPanel>(module, "StringPanel", docs::class_string_panel)
        .def(py::init([](const Panel& panel, std::optional<int> substrings,
                         std::optional<bool> bypass, double bypass_v) {
                 return checked_panel(string_panel(panel), substrings, bypass, bypass_v);
             }),
             py::arg("panel_or_diode"), py::kw_only(), py::arg("substrings") = py::none(),
             py::arg("bypass") = py::none(), py::arg("bypass_v") = diode_drop_v)
        .def(py::init([](const SingleDiode& diode, std::optional<int> substrings,
                         std::optional<bool> bypass, double bypass_v) {
                 return checked_panel({.diode = diode}, substrings, bypass, bypass_v);
             }),
             py::arg("panel_or_diode"), py::kw_only(), py::arg("substrings") = py::none(),
             py::arg("bypass") = py::none(), py::arg("bypass_v") = diode_drop_v, docs::string_panel)
        .def_readonly("diode", &StringPanel::diode, "Panel as a single diode.")
        .def_readonly("substrings", &StringPanel::substrings, "Number of equal substrings.")
        .def_readonly("bypass", &StringPanel::bypass, "Whether each substring has a bypass diode.")
        .def_readonly("bypass_v", &StringPanel::bypass_v,
                      "Voltage across a conducting bypass diode [V].")
        .def_readonly("noct_c", &StringPanel::noct_c, "Nominal operating cell temperature [°C].")
        .def_property_readonly(
            "assumed", [](const StringPanel& panel) { return texts_of(panel.assumed); },
            "Assumptions about the panel, in words.")
        .def("__repr__",
             [](const StringPanel& panel) {
                 return "StringPanel(substrings=" + std::to_string(panel.substrings) +
                        ", bypass=" + (panel.bypass ? "True" : "False") + ')';
             })
        .def(py::pickle(&panel_state, &panel_from));
    register_points(module);
    register_mixed_curve(module);
    py::class_<MixedArray>(module, "MixedArray", docs::class_mixed_array)
        .def(py::init([](const std::vector<std::vector<StringPanel>>& strings,
                         const std::vector<std::optional<double>>& blocking_v) {
            std::vector<PanelString> made;
            for (std::size_t i = 0; i < strings.size(); ++i) {
                made.push_back({.panels = strings[i], .blocking_v = blocking_v.at(i)});
            }
            return MixedArray::of(std::move(made));
        }))
        .def_property_readonly("strings",
                               [](const MixedArray& array) {
                                   std::vector<std::vector<StringPanel>> strings;
                                   for (const PanelString& string : array.strings) {
                                       strings.push_back(string.panels);
                                   }
                                   return strings;
                               })
        .def_property_readonly("blocking_v",
                               [](const MixedArray& array) {
                                   std::vector<std::optional<double>> drops;
                                   for (const PanelString& string : array.strings) {
                                       drops.push_back(string.blocking_v);
                                   }
                                   return drops;
                               })
        .def("at",
             [](const MixedArray& array, const std::vector<double>& irradiance_w_m2,
                const std::vector<double>& cell_temperature_c,
                const std::vector<std::vector<double>>& shade) {
                 std::vector<PanelConditions> conditions;
                 for (std::size_t i = 0; i < irradiance_w_m2.size(); ++i) {
                     check_condition(irradiance_w_m2[i], cell_temperature_c.at(i));
                     conditions.push_back({irradiance_w_m2[i], cell_temperature_c[i], shade.at(i)});
                 }
                 return HeldCurve(array, std::move(conditions));
             })
        .def("__repr__",
             [](const MixedArray& array) {
                 return "Array(" + std::to_string(array.strings.size()) + " strings, " +
                        std::to_string(array.panel_count()) + " panels)";
             })
        .def(py::pickle(
            [](const MixedArray& array) { return py::make_tuple(mixed_array_state(array)); },
            [](const py::tuple& state) { return mixed_array_from(state[0]); }));
}

}  // namespace heatmatch::python
