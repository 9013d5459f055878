#include "docs_margin.hpp"
#include "pybind.hpp"
#include "state.hpp"

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/shown_word.hpp"
#include "heatmatch/base/suggestion.hpp"
#include "heatmatch/match/margins/margin.hpp"
#include "heatmatch/match/margins/shown_margin.hpp"

namespace heatmatch::python {

UnitSystem unit_system_of(const std::string& name) {
    if (const auto known = find_choice<UnitSystem>(name)) return *known;
    throw InvalidInput(ErrorDetail{.field = "units",
                                   .value = quote(name),
                                   .allowed = "\"si\" or \"us\"",
                                   .remedy = verbatim("choose one")});
}

void register_margin(py::module_& module) {
    py::class_<Margin>(module, "Margin", "A named check of one part or run against one limit.")
        .def_readonly("name", &Margin::name, "name of the check")
        .def_readonly("subject", &Margin::subject, "the part or run")
        .def_property_readonly(
            "severity", [](const Margin& margin) { return margin.severity; },
            "none, caution, warning, danger or not assessed")
        .def_property_readonly(
            "consequence", [](const Margin& margin) { return margin.consequence; },
            "Severity above the limit: \"caution\", \"warning\" or \"danger\".")
        .def_property_readonly(
            "worst_severity", [](const Margin& margin) { return margin.worst_severity; },
            "with every unstated fact at the careful end of its field")
        .def_readonly("value", &Margin::value, "judged at its worst end, or None")
        .def_readonly("value_low", &Margin::value_low, "low end, or None")
        .def_readonly("value_high", &Margin::value_high, "high end, or None")
        .def_readonly("limit", &Margin::limit, "or None")
        .def_property_readonly(
            "unit", [](const Margin& margin) { return std::string(margin.unit.symbol); },
            "of value and limit")
        .def_readonly("headroom", &Margin::headroom,
                      "1 at rest, 0 at the limit, negative beyond it")
        .def_readonly("careful_headroom", &Margin::careful_headroom,
                      "the same with unstated facts at their careful ends")
        .def_readonly("source", &Margin::source, "source of the limit")
        .def_readonly("missing", &Margin::missing, "fields that would be needed")
        .def_property_readonly(
            "assumed", [](const Margin& margin) { return texts_of(margin.assumed); }, "assumptions")
        .def(
            "sentence",
            [](const Margin& margin, const std::string& units) {
                return margin.sentence(unit_system_of(units));
            },
            py::kw_only(), py::arg("units") = "si", "One plain sentence with the numbers.")
        .def("__repr__",
             [](const Margin& margin) {
                 return "<" + text_of_choice(margin.severity) + ": " + margin.name + ", " +
                        margin.subject + ": " + margin.sentence() + ">";
             })
        .def(py::pickle([](const Margin& margin) { return state_of(margin); }, &margin_from));
    module.def("shown_margin_name", &shown_margin_name, py::arg("name"),
               "The name of a margin as it is shown; another name unchanged.");
    module.def(
        "shown_margins",
        [] {
            py::dict all;
            for (const ShownMargin& known : shown_margins()) {
                all[py::str(std::string(known.name))] = std::string(known.shown);
            }
            return all;
        },
        "Names of margins in data, each with the name that is shown.");
    module.def("shown_word", &shown_word, py::arg("word"),
               "The word of a choice as it is shown; another word unchanged.");
    module.def(
        "near_names",
        [](const std::string& wrong, const std::vector<std::string>& known) {
            const std::vector<std::string_view> names(known.begin(), known.end());
            std::vector<std::string> near;
            for (const std::string_view name : near_names(wrong, names)) near.emplace_back(name);
            return near;
        },
        py::arg("wrong"), py::arg("known"),
        "Known names of which a wrong one may be a typing error, the nearest first.");
    module.def(
        "format_quantity",
        [](double value, const std::string& unit, const std::string& units, int digits) {
            const Unit* known = find_unit(unit);
            return format_quantity(value, known == nullptr ? Unit{.symbol = unit} : *known,
                                   unit_system_of(units), digits);
        },
        py::arg("value"), py::arg("unit"), py::kw_only(), py::arg("units") = "si",
        py::arg("digits") = 4, docs::format_quantity);
}

}  // namespace heatmatch::python
