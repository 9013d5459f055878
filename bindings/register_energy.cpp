#include "curves.hpp"
#include "docs_classes_more.hpp"
#include "docs_energy.hpp"
#include "placed_array.hpp"

#include <cmath>
#include <map>
#include <memory>
#include <unordered_map>

#include "heatmatch/base/error.hpp"
#include "heatmatch/solar/cell_temperature.hpp"
#include "heatmatch/solar/datasheet_fit.hpp"
#include "heatmatch/solar/energy_curve.hpp"
#include "heatmatch/solar/mixed_energy.hpp"

namespace heatmatch::python {

namespace {

/// An energy curve with its inputs, for pickles.
using Nodes = std::shared_ptr<const WeatherNodes>;

struct MadeCurve {
    SingleDiode diode{};
    double noct_c = usual_noct_c;
    double stc_match_ohm = 1.0;
    Nodes nodes{};
    std::optional<PlacedArray> placed{};  //!< of unlike panels: instead of diode and nodes
    EnergyCurve curve{};
};

MadeCurve made(SingleDiode diode, double noct_c, double stc_match_ohm, Nodes nodes,
               VectorWidth width = VectorWidth::automatic) {
    MadeCurve result{.diode = diode,
                     .noct_c = noct_c,
                     .stc_match_ohm = stc_match_ohm,
                     .nodes = std::move(nodes)};
    const py::gil_scoped_release release;
    result.curve = EnergyCurve(diode, noct_c, *result.nodes, stc_match_ohm, width);
    return result;
}

MadeCurve made_of_array(PlacedArray placed) {
    MadeCurve result{.placed = std::move(placed)};
    const py::gil_scoped_release release;
    result.stc_match_ohm = stc_match_ohm(result.placed->array);
    result.curve = EnergyCurve(*result.placed, result.stc_match_ohm);
    return result;
}

/// Condensed weather, by the object it is of and as long as that lives: many panels stand in one
/// weather. Touched with Python's lock held only.
Nodes condensed(const py::object& weather, const std::vector<int>& months) {
    static std::unordered_map<PyObject*, std::map<std::vector<int>, Nodes>> known;
    PyObject* const key = weather.ptr();
    const auto entry = known.find(key);
    if (entry != known.end() && entry->second.contains(months)) return entry->second.at(months);
    const auto& rows = weather.cast<const Weather&>();
    Nodes nodes;
    {
        const py::gil_scoped_release release;
        nodes = std::make_shared<const WeatherNodes>(weather_nodes(rows, {.months = months}));
    }
    if (!known.contains(key)) {
        py::weakref(weather, py::cpp_function([key](const py::handle& reference) {
                        known.erase(key);
                        reference.dec_ref();
                    }))
            .release();
    }
    known[key][months] = nodes;
    return nodes;
}

MadeCurve energy_curve(const py::object& panel_or_diode, const py::object& weather,
                       const std::vector<int>& months, bool exact,
                       const std::optional<double>& noct_c, const std::string& vector_width) {
    if (noct_c) {
        check_argument("noct_c", *noct_c, unit::celsius, {.low = 30.0, .high = 80.0});
    }
    const VectorWidth width = vector_width_from(vector_width);
    if (is_array(panel_or_diode)) {
        return made_of_array(
            placed_array(panel_or_diode, weather, {.months = months, .exact = exact}, noct_c));
    }
    if (!py::isinstance<Weather>(weather)) {
        throw InvalidInput(
            ErrorDetail{.part = "energy curve",
                        .field = "weather",
                        .value = quote(py::repr(weather).cast<std::string>()),
                        .allowed = "a Weather",
                        .remedy = verbatim("make one with Weather.from_months or from_frame")});
    }
    Nodes nodes;
    if (exact) {
        const auto& rows = weather.cast<const Weather&>();
        const py::gil_scoped_release release;
        nodes = std::make_shared<const WeatherNodes>(
            weather_nodes(rows, {.months = months, .exact = true}));
    } else {
        nodes = condensed(weather, months);
    }
    if (py::isinstance<Panel>(panel_or_diode)) {
        const Panel panel = fill_class_defaults(panel_or_diode.cast<Panel>()).panel;
        return made(fit_single_diode(panel), noct_c.value_or(*panel.noct_c),
                    *panel.v_mp / *panel.i_mp, std::move(nodes), width);
    }
    if (!py::isinstance<SingleDiode>(panel_or_diode)) {
        throw InvalidInput(ErrorDetail{
            .part = "energy curve",
            .field = "panel_or_diode",
            .value = quote(py::repr(panel_or_diode).cast<std::string>()),
            .allowed = "a Panel, a SingleDiode or an Array",
            .remedy = verbatim("use a panel of a catalog, or the result of fit_single_diode")});
    }
    const auto diode = panel_or_diode.cast<SingleDiode>();
    const OperatingPoint noon = diode.at(stc_irradiance_w_m2, stc_temperature_c).maximum_power();
    return made(diode, noct_c.value_or(usual_noct_c), noon.voltage_v / noon.current_a,
                std::move(nodes), width);
}

/// A function of resistance over a number or an array.
template <class Function>
py::object of_ohms(const py::object& resistance_ohm, const Function& function) {
    return map_numbers(resistance_ohm, "resistance_ohm", [&function](double ohm) {
        if (!std::isnan(ohm)) check_argument("resistance_ohm", ohm, unit::ohm, {.low = 0.0});
        return std::isnan(ohm) ? ohm : function(ohm);
    });
}

py::tuple curve_state(const MadeCurve& made_curve) {
    if (made_curve.placed) return py::make_tuple(placed_array_state(*made_curve.placed));
    return py::make_tuple(diode_state(made_curve.diode), made_curve.noct_c,
                          made_curve.stc_match_ohm, nodes_state(*made_curve.nodes));
}

MadeCurve curve_from(const py::tuple& state) {
    if (state.size() == 1) return made_of_array(placed_array_from(state[0].cast<py::tuple>()));
    return made(diode_from(state[0].cast<py::tuple>()), state[1].cast<double>(),
                state[2].cast<double>(),
                std::make_shared<const WeatherNodes>(nodes_from(state[3].cast<py::tuple>())));
}

}  // namespace

VectorWidth vector_width_from(const std::string& name) {
    if (const auto width = find_choice<VectorWidth>(name)) return *width;
    throw InvalidInput(ErrorDetail{.part = "call",
                                   .field = "vector_width",
                                   .value = quote(name),
                                   .allowed = "\"automatic\", \"portable\", \"avx2\" or "
                                              "\"avx512\"",
                                   .remedy = verbatim("omit it: the widest one is chosen")});
}

void register_energy(py::module_& module) {
    py::class_<LargestPoint>(module, "LargestPoint", docs::class_largest_point)
        .def_readonly("power_w", &LargestPoint::power_w, "Largest power [W].")
        .def_readonly("voltage_v", &LargestPoint::voltage_v, "Largest voltage [V].")
        .def_readonly("current_a", &LargestPoint::current_a, "Largest current [A].")
        .def("__repr__",
             [](const LargestPoint& point) {
                 return "LargestPoint(power_w=" + format_number(point.power_w) +
                        ", voltage_v=" + format_number(point.voltage_v) +
                        ", current_a=" + format_number(point.current_a) + ')';
             })
        .def(py::pickle(
            [](const LargestPoint& point) {
                return py::make_tuple(point.power_w, point.voltage_v, point.current_a);
            },
            [](const py::tuple& state) {
                return LargestPoint{state[0].cast<double>(), state[1].cast<double>(),
                                    state[2].cast<double>()};
            }));
    py::class_<MadeCurve>(module, "EnergyCurve",
                          "Energy that one panel delivers over some weather into a resistance. S x "
                          "P panels into R give S P times delivered_kwh(R P/S).")
        .def(
            py::init(&energy_curve), py::arg("panel_or_diode"), py::arg("weather"), py::kw_only(),
            py::arg("months") = std::vector<int>{}, py::arg("exact") = false,
            py::arg("noct_c") = py::none(), py::arg("vector_width") = "automatic",
            "Sums the rows of the weather in those months as they are, condensed unless `exact`; a "
            "ranking lets them stand for whole months.")
        .def(
            "delivered_kwh",
            [](const MadeCurve& made_curve, const py::object& ohms, double wire_ohm) {
                check_argument("wire_ohm", wire_ohm, unit::ohm, {.low = 0.0});
                return of_ohms(ohms, [&made_curve, wire_ohm](double ohm) {
                    return made_curve.curve.delivered_kwh(ohm, wire_ohm);
                });
            },
            py::arg("resistance_ohm"), py::kw_only(), py::arg("wire_ohm") = 0.0,
            "Energy into a resistance behind wire, number or array [kWh].")
        .def(
            "slope_kwh",
            [](const MadeCurve& made_curve, const py::object& ohms) {
                return of_ohms(
                    ohms, [&made_curve](double ohm) { return made_curve.curve.slope_kwh(ohm); });
            },
            py::arg("resistance_ohm"), "dE/d(ln R), number or array [kWh].")
        .def_property_readonly(
            "mpp_kwh", [](const MadeCurve& made_curve) { return made_curve.curve.mpp_kwh(); },
            "energy at the maximum power point all the time [kWh]")
        .def_property_readonly(
            "best_resistance_ohm",
            [](const MadeCurve& made_curve) { return made_curve.curve.best_resistance_ohm(); },
            "load resistance that absorbs the most energy [ohm]")
        .def_property_readonly(
            "stc_match_ohm", [](const MadeCurve& made_curve) { return made_curve.stc_match_ohm; },
            "Vmp/Imp [ohm]")
        .def(
            "largest",
            [](const MadeCurve& made_curve, double resistance_ohm) {
                return made_curve.curve.largest(resistance_ohm);
            },
            py::arg("resistance_ohm"), "The largest power, voltage and current over the weather.")
        .def(
            "hours_above",
            [](const MadeCurve& made_curve, double resistance_ohm, const py::object& power_w) {
                return map_numbers(power_w, "power_w", [&made_curve, resistance_ohm](double watts) {
                    return made_curve.curve.hours_above(resistance_ohm, watts);
                });
            },
            py::arg("resistance_ohm"), py::arg("power_w"),
            "Hours with more than that power, number or array [h].")
        .def(
            "near_short_circuit_share",
            [](const MadeCurve& made_curve, const py::object& ohms) {
                return of_ohms(ohms, [&made_curve](double ohm) {
                    return made_curve.curve.near_short_circuit_share(ohm);
                });
            },
            py::arg("resistance_ohm"),
            "Share of the sunlit hours below half of the open-circuit voltage, number or array.")
        .def("__repr__",
             [](const MadeCurve& made_curve) {
                 return "EnergyCurve(best_resistance_ohm=" +
                        format_number(made_curve.curve.best_resistance_ohm(), 4) +
                        ", stc_match_ohm=" + format_number(made_curve.stc_match_ohm, 4) + ')';
             })
        .def(py::pickle(&curve_state, &curve_from));
    module.def(
        "widest_vectors", [] { return std::string(vector_width_name(widest_vectors())); },
        docs::widest_vectors);
}

}  // namespace heatmatch::python
