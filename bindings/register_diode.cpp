#include "curves.hpp"
#include "docs_classes.hpp"
#include "docs_classes_more.hpp"
#include "docs_curves.hpp"
#include "docs_diode.hpp"
#include "pybind.hpp"

#include <cmath>

#include "heatmatch/base/error.hpp"
#include "heatmatch/parts/class_defaults.hpp"
#include "heatmatch/solar/cold_voltage.hpp"
#include "heatmatch/solar/datasheet_fit.hpp"

namespace heatmatch::python {

namespace {

OperatingPoints points_of_arrays(const DoubleArray& light, const DoubleArray& ln_saturation,
                                 const DoubleArray& series, const DoubleArray& shunt,
                                 const DoubleArray& ideality, const DoubleArray& ohms) {
    const auto size = static_cast<std::size_t>(ohms.size());
    for (const DoubleArray* array : {&light, &ln_saturation, &series, &shunt, &ideality}) {
        if (static_cast<std::size_t>(array->size()) == size) continue;
        throw InvalidInput(ErrorDetail{.part = "operating_points",
                                       .field = "array length",
                                       .value = std::to_string(array->size()),
                                       .allowed = std::to_string(size) + " for all six arrays",
                                       .remedy = verbatim("use numpy.broadcast_arrays")});
    }
    const std::vector<py::ssize_t> shape(ohms.shape(), ohms.shape() + ohms.ndim());
    OperatingPoints points{py::array_t<double>(shape), py::array_t<double>(shape),
                           py::array_t<double>(shape)};
    const auto view = [size](const DoubleArray& array) {
        return std::span<const double>(array.data(), size);
    };
    const std::span<double> volts(points.voltage_v.mutable_data(), size);
    const std::span<double> amperes(points.current_a.mutable_data(), size);
    double* watts = points.power_w.mutable_data();
    const DiodeCurves curves{view(light), view(ln_saturation), view(series), view(shunt),
                             view(ideality)};
    const std::span<const double> resistance = view(ohms);
    {
        const py::gil_scoped_release release;
        operating_points(curves, resistance, volts, amperes);
        for (std::size_t i = 0; i < size; ++i) watts[i] = volts[i] * amperes[i];
    }
    return points;
}

SingleDiode make_diode(double light_current_a, double saturation_current_a,
                       double series_resistance_ohm, double shunt_resistance_ohm,
                       double modified_ideality_v, double alpha_isc_a_per_k, double band_gap_ev,
                       double relative_gap_per_k) {
    constexpr Range positive{.low = 0.0, .high = 1e6, .low_open = true};
    constexpr Range from_zero{.low = 0.0, .high = 1e6};
    check_argument("light_current_a", light_current_a, unit::ampere, positive);
    check_argument("saturation_current_a", saturation_current_a, unit::ampere, positive);
    check_argument("series_resistance_ohm", series_resistance_ohm, unit::ohm, from_zero);
    check_argument("shunt_resistance_ohm", shunt_resistance_ohm, unit::ohm,
                   {.low = 0.0, .low_open = true});
    check_argument("modified_ideality_v", modified_ideality_v, unit::volt, positive);
    check_argument("alpha_isc_a_per_k", alpha_isc_a_per_k, unit::ampere_per_kelvin,
                   {.low = -1.0, .high = 1.0});
    check_argument("band_gap_ev", band_gap_ev, unit::none, {.low = 0.1, .high = 5.0});
    check_argument("band_gap_per_k", relative_gap_per_k, unit::none, {.low = -0.01, .high = 0.01});
    return {.light_current_a = light_current_a,
            .ln_saturation_current = std::log(saturation_current_a),
            .series_resistance_ohm = series_resistance_ohm,
            .shunt_conductance_s = 1.0 / shunt_resistance_ohm,
            .modified_ideality_v = modified_ideality_v,
            .alpha_isc_a_per_k = alpha_isc_a_per_k,
            .band_gap_ev = band_gap_ev,
            .band_gap_per_k = relative_gap_per_k};
}

void register_curves(py::module_& module) {
    py::class_<OperatingPoint>(module, "OperatingPoint", docs::class_operating_point)
        .def_readonly("voltage_v", &OperatingPoint::voltage_v, "Voltage at the load [V].")
        .def_readonly("current_a", &OperatingPoint::current_a, "Current through the load [A].")
        .def_readonly("power_w", &OperatingPoint::power_w, "Power into the load [W].")
        .def("__repr__",
             [](const OperatingPoint& point) {
                 return "OperatingPoint(voltage_v=" + format_number(point.voltage_v) +
                        ", current_a=" + format_number(point.current_a) +
                        ", power_w=" + format_number(point.power_w) + ')';
             })
        .def(py::pickle(
            [](const OperatingPoint& point) {
                return py::make_tuple(point.voltage_v, point.current_a, point.power_w);
            },
            [](const py::tuple& state) {
                return OperatingPoint{state[0].cast<double>(), state[1].cast<double>(),
                                      state[2].cast<double>()};
            }));
    py::class_<OperatingPoints>(module, "OperatingPoints", docs::class_operating_points)
        .def_readonly("voltage_v", &OperatingPoints::voltage_v, "Voltages at the loads [V].")
        .def_readonly("current_a", &OperatingPoints::current_a, "Currents through the loads [A].")
        .def_readonly("power_w", &OperatingPoints::power_w, "Powers into the loads [W].")
        .def("__repr__",
             [](const OperatingPoints& points) {
                 return "OperatingPoints(" + std::to_string(points.power_w.size()) + " points)";
             })
        .def(py::pickle(
            [](const OperatingPoints& points) {
                return py::make_tuple(points.voltage_v, points.current_a, points.power_w);
            },
            [](const py::tuple& state) {
                return OperatingPoints{state[0].cast<py::array_t<double>>(),
                                       state[1].cast<py::array_t<double>>(),
                                       state[2].cast<py::array_t<double>>()};
            }));
    py::class_<DiodeCurve>(module, "DiodeCurve", docs::class_diode_curve)
        .def_readonly("light_current_a", &DiodeCurve::light_current_a,
                      "Light-generated current [A].")
        .def_readonly(
            "ln_saturation_current", &DiodeCurve::ln_saturation_current,
            "Natural logarithm of the saturation current over 1 A, ln(I0 / 1 A) [dimensionless].")
        .def_readonly("series_resistance_ohm", &DiodeCurve::series_resistance_ohm,
                      "Series resistance [ohm].")
        .def_readonly("shunt_conductance_s", &DiodeCurve::shunt_conductance_s,
                      "Shunt conductance [S].")
        .def_readonly("ideality_v", &DiodeCurve::ideality_v,
                      "Modified ideality factor n Ns k T / q [V].")
        .def(
            "current_a",
            [](const DiodeCurve& curve, const py::object& voltage_v) {
                return map_numbers(voltage_v, "voltage_v",
                                   [&curve](double v) { return curve.current_a(v); });
            },
            py::arg("voltage_v"), docs::curve_current_a)
        .def(
            "voltage_v",
            [](const DiodeCurve& curve, const py::object& current_a) {
                return map_numbers(current_a, "current_a",
                                   [&curve](double i) { return curve.voltage_v(i); });
            },
            py::arg("current_a"), docs::curve_voltage_v)
        .def("into_resistance", &into_resistance<DiodeCurve>, py::arg("resistance_ohm"),
             docs::curve_into_resistance)
        .def("maximum_power", &DiodeCurve::maximum_power, docs::curve_maximum_power)
        .def_property_readonly("open_circuit_voltage_v", &DiodeCurve::open_circuit_voltage_v,
                               "Open-circuit voltage [V].")
        .def_property_readonly("short_circuit_current_a", &DiodeCurve::short_circuit_current_a,
                               "Short-circuit current [A].")
        .def("__repr__",
             [](const DiodeCurve& curve) {
                 return "DiodeCurve(open_circuit_voltage_v=" +
                        format_number(curve.open_circuit_voltage_v()) +
                        ", short_circuit_current_a=" +
                        format_number(curve.short_circuit_current_a()) + ')';
             })
        .def(py::pickle(
            [](const DiodeCurve& curve) {
                return py::make_tuple(curve.light_current_a, curve.ln_saturation_current,
                                      curve.series_resistance_ohm, curve.shunt_conductance_s,
                                      curve.ideality_v);
            },
            [](const py::tuple& state) {
                const auto number = [&state](std::size_t i) { return state[i].cast<double>(); };
                return DiodeCurve{number(0), number(1), number(2), number(3), number(4)};
            }));
    module.def("operating_points", &points_of_arrays, py::arg("light_current_a"),
               py::arg("ln_saturation_current"), py::arg("series_resistance_ohm"),
               py::arg("shunt_conductance_s"), py::arg("ideality_v"), py::arg("resistance_ohm"),
               docs::operating_points);
}

void register_single_diode(py::module_& module) {
    py::class_<SingleDiode>(module, "SingleDiode", docs::class_single_diode)
        .def(py::init(&make_diode), py::kw_only(), py::arg("light_current_a"),
             py::arg("saturation_current_a"), py::arg("series_resistance_ohm"),
             py::arg("shunt_resistance_ohm"), py::arg("modified_ideality_v"),
             py::arg("alpha_isc_a_per_k") = 0.0, py::arg("band_gap_ev") = silicon_band_gap_ev,
             py::arg("band_gap_per_k") = band_gap_per_k, docs::single_diode)
        .def_readonly("light_current_a", &SingleDiode::light_current_a,
                      "Light-generated current [A].")
        .def_readonly(
            "ln_saturation_current", &SingleDiode::ln_saturation_current,
            "Natural logarithm of the saturation current over 1 A, ln(I0 / 1 A) [dimensionless].")
        .def_readonly("series_resistance_ohm", &SingleDiode::series_resistance_ohm,
                      "Series resistance [ohm].")
        .def_readonly("shunt_conductance_s", &SingleDiode::shunt_conductance_s,
                      "Shunt conductance [S].")
        .def_readonly("modified_ideality_v", &SingleDiode::modified_ideality_v,
                      "Modified ideality factor n Ns k T / q [V].")
        .def_readonly("alpha_isc_a_per_k", &SingleDiode::alpha_isc_a_per_k,
                      "Change of the light-generated current with temperature [A/K].")
        .def_readonly("band_gap_ev", &SingleDiode::band_gap_ev, "Band gap at 25 °C [eV].")
        .def_readonly("band_gap_per_k", &SingleDiode::band_gap_per_k,
                      "Relative change of the band gap with temperature [1/K].")
        .def_readonly("series_resistance_per_k", &SingleDiode::series_resistance_per_k,
                      "Relative change of the series resistance with temperature [1/K].")
        .def(
            "at",
            [](const SingleDiode& diode, double irradiance_w_m2, double cell_temperature_c) {
                check_condition(irradiance_w_m2, cell_temperature_c);
                return diode.at(irradiance_w_m2, cell_temperature_c);
            },
            py::kw_only(), py::arg("irradiance_w_m2"), py::arg("cell_temperature_c"),
            docs::single_diode_at)
        .def(
            "scaled",
            [](const SingleDiode& diode, double current_factor, double voltage_factor) {
                constexpr Range factor{.low = 0.0, .high = 100.0, .low_open = true};
                check_argument("current_factor", current_factor, unit::none, factor);
                check_argument("voltage_factor", voltage_factor, unit::none, factor);
                return diode.scaled(current_factor, voltage_factor);
            },
            py::kw_only(), py::arg("current_factor") = 1.0, py::arg("voltage_factor") = 1.0,
            docs::single_diode_scaled)
        .def("__repr__",
             [](const SingleDiode& diode) {
                 return "SingleDiode(light_current_a=" + format_number(diode.light_current_a) +
                        ", modified_ideality_v=" + format_number(diode.modified_ideality_v) +
                        ", series_resistance_ohm=" + format_number(diode.series_resistance_ohm) +
                        ')';
             })
        .def(py::pickle(&diode_state, &diode_from));
    py::class_<DatasheetFit, SingleDiode>(module, "DatasheetFit", docs::class_datasheet_fit)
        .def_property_readonly(
            "fit_mode", [](const DatasheetFit& fit) { return fit.fit_mode; },
            "Way in which the label was met: \"exact\", \"split\" (power kept, `v_mp` moved) or "
            "\"gap\".")
        .def_readonly("vmp_shift", &DatasheetFit::vmp_shift,
                      "Relative change of v_mp from the label [dimensionless].")
        .def_readonly("gamma_error_per_k", &DatasheetFit::gamma_error_per_k,
                      "Power coefficient of the model minus that of the label [1/K].")
        .def_readonly(
            "series_resistance_clamped", &DatasheetFit::series_resistance_clamped,
            "Whether the series resistance reached the limit of its change with temperature.")
        .def_readonly("warnings", &DatasheetFit::warnings,
                      "Unusual label values, one sentence each.")
        .def_property_readonly(
            "assumed", [](const DatasheetFit& fit) { return texts_of(fit.assumed); },
            "Defaults of the panel's class that were used, one sentence each.")
        .def("__repr__",
             [](const DatasheetFit& fit) {
                 return "DatasheetFit(fit_mode='" + text_of_choice(fit.fit_mode) +
                        "', vmp_shift=" + format_number(fit.vmp_shift, 3) + ')';
             })
        .def(py::pickle(
            [](const DatasheetFit& fit) {
                return py::make_tuple(diode_state(fit), static_cast<int>(fit.fit_mode),
                                      fit.vmp_shift, fit.gamma_error_per_k,
                                      fit.series_resistance_clamped, fit.warnings,
                                      assumption_states(fit.assumed));
            },
            [](const py::tuple& state) {
                DatasheetFit fit;
                static_cast<SingleDiode&>(fit) = diode_from(state[0].cast<py::tuple>());
                fit.fit_mode = static_cast<FitMode>(state[1].cast<int>());
                fit.vmp_shift = state[2].cast<double>();
                fit.gamma_error_per_k = state[3].cast<double>();
                fit.series_resistance_clamped = state[4].cast<bool>();
                fit.warnings = state[5].cast<Sentences>();
                fit.assumed = assumptions_from(state[6]);
                return fit;
            }));
}

}  // namespace

py::tuple diode_state(const SingleDiode& diode) {
    return py::make_tuple(diode.light_current_a, diode.ln_saturation_current,
                          diode.series_resistance_ohm, diode.shunt_conductance_s,
                          diode.modified_ideality_v, diode.alpha_isc_a_per_k, diode.band_gap_ev,
                          diode.band_gap_per_k, diode.series_resistance_per_k);
}

SingleDiode diode_from(const py::tuple& state) {
    const auto number = [&state](std::size_t i) { return state[i].cast<double>(); };
    return {number(0), number(1), number(2), number(3), number(4),
            number(5), number(6), number(7), number(8)};
}

void register_diode(py::module_& module) {
    register_curves(module);
    register_single_diode(module);
}

void register_fits(py::module_& module) {
    module.def("fit_single_diode", &fit_single_diode, py::arg("panel"), py::kw_only(),
               py::arg("use_gamma") = true, docs::fit_single_diode);
    module.def(
        "cold_voltage",
        [](const Panel& panel, double record_low_c) {
            check_argument("record_low_c", record_low_c, unit::celsius,
                           {.low = -70.0, .high = 40.0});
            return cold_voltage(panel, record_low_c).v_oc;
        },
        py::arg("panel"), py::kw_only(), py::arg("record_low_c"), docs::cold_voltage);
}

}  // namespace heatmatch::python
