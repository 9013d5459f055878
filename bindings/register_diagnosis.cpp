#include "docs_classes.hpp"
#include "docs_classes_more.hpp"
#include "docs_diagnosis.hpp"
#include "parts_view.hpp"
#include "progress_call.hpp"
#include "state.hpp"
#include "views.hpp"

#include "heatmatch/operation/diagnosis/diagnosis.hpp"

namespace heatmatch::python {

namespace {

using Texts = std::vector<std::string>;

py::tuple readings_state(const Readings& readings) {
    py::tuple rows(readings.rows.size());
    for (std::size_t i = 0; i < readings.rows.size(); ++i) {
        const Reading& r = readings.rows[i];
        rows[i] = py::make_tuple(r.unix_time_s, r.irradiance_w_m2, r.panel_temperature_c, r.array_v,
                                 r.bank_v, r.bank_a, r.open_v, r.short_a, r.element_ohm, r.bank_ohm,
                                 r.sheath_c, r.store_c, r.air_c);
    }
    return py::make_tuple(rows, readings.remarks);
}

Readings readings_from(const py::tuple& state) {
    Readings readings{.remarks = state[1].cast<Sentences>()};
    for (const py::handle& row : state[0]) {
        const auto list = row.cast<std::vector<std::optional<double>>>();
        readings.rows.push_back({.unix_time_s = list.at(0),
                                 .irradiance_w_m2 = list.at(1),
                                 .panel_temperature_c = list.at(2),
                                 .array_v = list.at(3),
                                 .bank_v = list.at(4),
                                 .bank_a = list.at(5),
                                 .open_v = list.at(6),
                                 .short_a = list.at(7),
                                 .element_ohm = list.at(8),
                                 .bank_ohm = list.at(9),
                                 .sheath_c = list.at(10),
                                 .store_c = list.at(11),
                                 .air_c = list.at(12)});
    }
    return readings;
}

py::tuple fitted_state(const FittedValue& made) {
    return py::make_tuple(made.name, made.value, made.low, made.high,
                          std::string(made.unit.symbol));
}

FittedValue fitted_value_from(const py::tuple& state) {
    const Unit* unit = find_unit(state[4].cast<std::string>());
    return {.name = state[0].cast<Sentence>(),
            .value = state[1].cast<double>(),
            .low = state[2].cast<double>(),
            .high = state[3].cast<double>(),
            .unit = unit == nullptr ? Unit{} : *unit};
}

py::tuple hypothesis_state(const Hypothesis& made) {
    return py::make_tuple(static_cast<int>(made.kind), made.name, made.sentence, made.misfit,
                          made.score, made.weight, tuple_with(made.fitted, &fitted_state),
                          made.evidence);
}

Hypothesis hypothesis_from(const py::tuple& state) {
    return {.kind = static_cast<FaultKind>(state[0].cast<int>()),
            .name = state[1].cast<std::string>(),
            .sentence = state[2].cast<Sentence>(),
            .misfit = state[3].cast<double>(),
            .score = state[4].cast<double>(),
            .weight = state[5].cast<double>(),
            .fitted = items_from(state[6], fitted_value_from),
            .evidence = state[7].cast<Sentences>()};
}

py::tuple next_state(const NextMeasurement& made) {
    return py::make_tuple(made.reading, made.how, made.predictions, made.separation);
}

NextMeasurement next_from(const py::tuple& state) {
    return {.reading = state[0].cast<Sentence>(),
            .how = state[1].cast<Sentence>(),
            .predictions = state[2].cast<Sentence>(),
            .separation = state[3].cast<double>()};
}

py::tuple diagnosis_state(const Diagnosis& made) {
    return py::make_tuple(tuple_with(made.ranked, &hypothesis_state), made.group,
                          made.indistinguishable, made.unexplained,
                          tuple_with(made.next, &next_state), made.verdict, made.bank_ohms,
                          made.remarks);
}

Diagnosis diagnosis_from(const py::tuple& state) {
    return {.ranked = items_from(state[0], hypothesis_from),
            .group = state[1].cast<std::size_t>(),
            .indistinguishable = state[2].cast<bool>(),
            .unexplained = state[3].cast<bool>(),
            .next = items_from(state[4], next_from),
            .verdict = state[5].cast<Sentence>(),
            .bank_ohms = state[6].cast<Sentence>(),
            .remarks = state[7].cast<Sentences>()};
}

Readings from_csv(const py::object& text_or_path) {
    if (py::isinstance<py::str>(text_or_path)) {
        return read_readings_csv(text_from(text_or_path, "text_or_path"));
    }
    return read_readings_csv(path_from(text_or_path));
}

}  // namespace

void register_diagnosis(py::module_& module) {
    py::class_<Readings>(module, "Readings",
                         "Readings of meters, in order. Make them with from_csv, from_rows or "
                         "from_frame.")
        .def_static("from_csv", &from_csv, py::arg("text_or_path"), py::pos_only(),
                    docs::readings_from_csv)
        .def_property_readonly(
            "rows",
            [](const Readings& readings) {
                py::list rows;
                for (const Reading& row : readings.rows) {
                    rows.append(record_to_dict(reading_fields(), &row));
                }
                return rows;
            },
            "readings of each row, by name")
        .def_readonly("remarks", &Readings::remarks, "omitted readings, counted")
        .def("__len__", [](const Readings& readings) { return readings.rows.size(); })
        .def("__repr__",
             [](const Readings& readings) {
                 return "<Readings of " + std::to_string(readings.rows.size()) + " rows>";
             })
        .def(py::pickle(&readings_state, &readings_from));
    py::class_<FittedValue>(module, "FittedValue", docs::class_fitted_value)
        .def_readonly("name", &FittedValue::name, "Name of the quantity.")
        .def_readonly("value", &FittedValue::value, "Fitted value, in `unit`.")
        .def_readonly("low", &FittedValue::low, "Value minus two standard deviations, in `unit`.")
        .def_readonly("high", &FittedValue::high, "Value plus two standard deviations, in `unit`.")
        .def_property_readonly(
            "unit", [](const FittedValue& made) { return std::string(made.unit.symbol); },
            "Unit of `value`, `low` and `high`; empty if dimensionless.")
        .def(py::pickle(&fitted_state, &fitted_value_from));
    py::class_<Hypothesis>(module, "Hypothesis", docs::class_hypothesis)
        .def_property_readonly(
            "kind", [](const Hypothesis& made) { return made.kind; },
            "Kind of fault: \"as expected\", \"element open\", \"turns shorted\", \"section "
            "bypassed\", \"panel missing\", \"hot joint\", \"low sun\", \"dirt\", \"aged\", "
            "\"panels hooked otherwise\", \"bank hooked otherwise\", \"another element\", "
            "\"another number of elements\" or \"fill conductivity\".")
        .def_readonly("name", &Hypothesis::name, "Name of the explanation.")
        .def_readonly("sentence", &Hypothesis::sentence,
                      "Meaning of the explanation, and what to do.")
        .def_readonly(
            "misfit", &Hypothesis::misfit,
            "Sum of squared differences of readings over their errors, chi-square [dimensionless].")
        .def_readonly("score", &Hypothesis::score,
                      "Misfit plus a penalty for each fitted number and for rare faults "
                      "[dimensionless]; the lowest is best.")
        .def_readonly("weight", &Hypothesis::weight,
                      "Share of this explanation among all, 0 to 1 [dimensionless].")
        .def_readonly("fitted", &Hypothesis::fitted, "Numbers fitted to the readings.")
        .def_readonly("evidence", &Hypothesis::evidence,
                      "Readings against what the explanation predicts, one sentence each.")
        .def("__repr__", [](const Hypothesis& made) { return "<Hypothesis " + made.name + ">"; })
        .def(py::pickle(&hypothesis_state, &hypothesis_from));
    py::class_<NextMeasurement>(module, "NextMeasurement", docs::class_next_measurement)
        .def_readonly("reading", &NextMeasurement::reading, "Quantity to read.")
        .def_readonly("how", &NextMeasurement::how, "Instruction for the reading.")
        .def_readonly("predictions", &NextMeasurement::predictions,
                      "Prediction of each explanation, in words.")
        .def_readonly("separation", &NextMeasurement::separation,
                      "Difference between the predictions, in errors of the meter [dimensionless].")
        .def("__repr__",
             [](const NextMeasurement& made) {
                 return "<NextMeasurement " + made.reading.text() + ">";
             })
        .def(py::pickle(&next_state, &next_from));
    py::class_<Diagnosis>(module, "Diagnosis", "Explanations of readings, the best first.")
        .def_readonly("ranked", &Diagnosis::ranked, "explanations, the best first")
        .def_readonly("group", &Diagnosis::group, "so many of the first explain the readings alike")
        .def_readonly("indistinguishable", &Diagnosis::indistinguishable,
                      "the group has more than one")
        .def_readonly("unexplained", &Diagnosis::unexplained, "not even the best fits")
        .def_readonly("next", &Diagnosis::next, "measurements that separate them, best first")
        .def_readonly("verdict", &Diagnosis::verdict, "first plain sentence")
        .def_readonly("bank_ohms", &Diagnosis::bank_ohms,
                      "voltage over current as read, beside the described resistance; or empty")
        .def_readonly("remarks", &Diagnosis::remarks, "omitted or suspicious readings")
        .def(py::pickle(&diagnosis_state, &diagnosis_from));
    module.def(
        "diagnose",
        [](const Candidate& candidate, const Readings& readings, const Catalog* catalog,
           const py::object& progress) {
            ProgressCall call(progress, between_looks);
            const auto parts = catalog == nullptr ? nullptr : snapshot_of(*catalog);
            const DiagnosisOptions options{.parts = parts.get(), .progress = call.callback()};
            return call.run([&] { return diagnose(candidate, readings, options); });
        },
        py::arg("candidate"), py::arg("readings"), py::kw_only(), py::arg("catalog") = py::none(),
        py::arg("progress") = py::none(), docs::diagnose);
}

}  // namespace heatmatch::python
