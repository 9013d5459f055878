#include "docs_calibration.hpp"
#include "docs_classes.hpp"
#include "parts_view.hpp"
#include "progress_call.hpp"
#include "state.hpp"
#include "store_log.hpp"
#include "views.hpp"

#include "heatmatch/operation/calibration/calibration.hpp"

namespace heatmatch::python {

namespace {

constexpr std::array<NamedNumber<Fitted>, 4> fitted_numbers{{
    {"value", &Fitted::value, "Fitted number: conductivity [W/mK] or loss factor [dimensionless]."},
    {"standard_error", &Fitted::standard_error, "Standard error of `value`, in its unit."},
    {"low", &Fitted::low,
     "Low end of the joint 99 % region of both fitted numbers, with the model's own error, in the "
     "unit of `value`."},
    {"high", &Fitted::high,
     "High end of the joint 99 % region of both fitted numbers, with the model's own error, in the "
     "unit of `value`."},
}};

Fitted fitted_from(const py::tuple& state) {
    Fitted fitted;
    fill_numbers(fitted, fitted_numbers, state);
    return fitted;
}

py::tuple calibration_state(const Calibration& made) {
    return py::make_tuple(numbers_state(made.k20_w_mk, fitted_numbers),
                          numbers_state(made.loss_factor, fitted_numbers), made.correlation,
                          made.residual_k, made.residual_before_k, made.readings, made.medium,
                          made.loss_factor_before, made.sentences, made.remarks);
}

Calibration calibration_from(const py::tuple& state) {
    return {.k20_w_mk = fitted_from(state[0].cast<py::tuple>()),
            .loss_factor = fitted_from(state[1].cast<py::tuple>()),
            .correlation = state[2].cast<double>(),
            .residual_k = state[3].cast<double>(),
            .residual_before_k = state[4].cast<double>(),
            .readings = state[5].cast<std::size_t>(),
            .medium = state[6].cast<std::string>(),
            .loss_factor_before = state[7].cast<double>(),
            .sentences = state[8].cast<Sentences>(),
            .remarks = state[9].cast<Sentences>()};
}

Calibration calibrated(const Candidate& candidate, const StoreLog& log,
                       const py::object& progress) {
    ProgressCall call(progress, between_looks);
    return call.run([&] { return calibrate(candidate, log, call.callback()); });
}

}  // namespace

void register_calibration(py::module_& module) {
    py::class_<Fitted> fitted(module, "Fitted", docs::class_fitted);
    add_numbers(fitted, fitted_numbers);
    fitted
        .def("__repr__",
             [](const Fitted& made) {
                 return "<Fitted " + format_number(made.value, 4) + ", " +
                        format_number(made.low, 4) + " to " + format_number(made.high, 4) + ">";
             })
        .def(py::pickle([](const Fitted& made) { return numbers_state(made, fitted_numbers); },
                        &fitted_from));
    py::class_<Calibration>(module, "Calibration", "Properties of a store fitted to its log.")
        .def_readonly("k20_w_mk", &Calibration::k20_w_mk,
                      "conductivity of the fill at 20 °C [W/mK]")
        .def_readonly("loss_factor", &Calibration::loss_factor,
                      "heat loss over that of the store's description")
        .def_readonly("correlation", &Calibration::correlation, "between the two")
        .def_readonly("residual_k", &Calibration::residual_k,
                      "root mean square difference between readings and model [K]")
        .def_readonly("residual_before_k", &Calibration::residual_before_k,
                      "the same with the numbers as they were [K]")
        .def_readonly("readings", &Calibration::readings, "temperatures that were used")
        .def_readonly("medium", &Calibration::medium, "id of the fill")
        .def_readonly("loss_factor_before", &Calibration::loss_factor_before,
                      "that the store was described with")
        .def_readonly("sentences", &Calibration::sentences, "the result, one sentence each")
        .def_readonly("remarks", &Calibration::remarks, "remarks")
        .def(
            "applied_to",
            [](const Calibration& made, const Installation& installation, const Catalog& catalog) {
                return made.applied_to(installation, *snapshot_of(catalog));
            },
            py::arg("installation"), py::arg("catalog"),
            "The installation with both numbers as measured: the fill given inline, the store's "
            "loss_factor.")
        .def("__repr__",
             [](const Calibration& made) {
                 const Sentences& told = made.sentences;
                 return "<Calibration: " + (told.empty() ? "" : told.front().text()) + ">";
             })
        .def(py::pickle(&calibration_state, &calibration_from));
    module.def("calibrate", &calibrated, py::arg("candidate"), py::arg("log"), py::kw_only(),
               py::arg("progress") = py::none(), docs::calibrate);
}

}  // namespace heatmatch::python
