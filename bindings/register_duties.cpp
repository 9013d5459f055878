#include "docs_classes.hpp"
#include "docs_classes_more.hpp"
#include "pybind.hpp"

#include "heatmatch/answer/check_counts.hpp"
#include "heatmatch/match/candidate/code_duties.hpp"

namespace heatmatch::python {

namespace {

py::tuple state_of_duty(const CodeDuty& duty) {
    return py::make_tuple(duty.name, word_of(duty.code), word_of(duty.applies), duty.begins_v,
                          duty.begins_a, word_of(duty.met_by), duty.devices, duty.suitable_controls,
                          duty.missing, duty.description, duty.source);
}

template <class Kind>
Kind choice_from(const py::handle& word) {
    return find_choice<Kind>(word.cast<std::string>()).value();
}

CodeDuty duty_from(const py::tuple& state) {
    return {.name = state[0].cast<std::string>(),
            .code = choice_from<WiringCode>(state[1]),
            .applies = choice_from<Answer>(state[2]),
            .begins_v = state[3].cast<std::optional<double>>(),
            .begins_a = state[4].cast<std::optional<double>>(),
            .met_by = choice_from<DutyMeans>(state[5]),
            .devices = state[6].cast<std::vector<std::string>>(),
            .suitable_controls = state[7].cast<std::vector<std::string>>(),
            .missing = state[8].cast<std::vector<std::string>>(),
            .description = state[9].cast<Sentence>(),
            .source = state[10].cast<std::string>()};
}

void register_code_duty(py::module_& module) {
    py::class_<CodeDuty>(module, "CodeDuty", docs::class_code_duty)
        .def_readonly("name", &CodeDuty::name, "Name of the duty.")
        .def_property_readonly(
            "code", [](const CodeDuty& duty) { return duty.code; },
            "Wiring code that contains it: \"nec\" (National Electrical Code) or \"iec\" (IEC "
            "60364).")
        .def_property_readonly(
            "applies", [](const CodeDuty& duty) { return duty.applies; },
            "Whether it applies here: \"yes\", \"no\" or \"unknown\", which counts as yes.")
        .def_readonly("begins_v", &CodeDuty::begins_v,
                      "Open-circuit voltage at the record low at which it begins [V]; None if it "
                      "applies at any.")
        .def_readonly(
            "begins_a", &CodeDuty::begins_a,
            "Current above which it applies at any voltage [A]; None if only voltage counts.")
        .def_property_readonly(
            "met_by", [](const CodeDuty& duty) { return duty.met_by; },
            "Means by which it is met here: \"a device\", \"as stated\", \"not met\", \"nobody "
            "stated\" or \"not due\".")
        .def_readonly("devices", &CodeDuty::devices, "Ids of the controls here that serve it.")
        .def_readonly("suitable_controls", &CodeDuty::suitable_controls,
                      "Ids of controls of the catalog that would detect the fault.")
        .def_readonly("missing", &CodeDuty::missing,
                      "Names of the fields that would show whether it applies or is met.")
        .def_readonly("description", &CodeDuty::description,
                      "Requirement, and what is known here about it, in one sentence.")
        .def_readonly("source", &CodeDuty::source,
                      "Key of the code in the bibliography, see ``sources``.")
        .def("__repr__",
             [](const CodeDuty& duty) {
                 return "<CodeDuty " + duty.name + ", " + text_of_choice(duty.code) + ": " +
                        text_of_choice(duty.met_by) + ">";
             })
        .def(py::pickle(&state_of_duty, &duty_from));
}

void register_counts(py::module_& module) {
    py::class_<CheckCounts>(module, "CheckCounts", docs::class_check_counts)
        .def_readonly("made", &CheckCounts::made, "Number of checks that were made.")
        .def_readonly("not_made", &CheckCounts::not_made,
                      "Number of checks that were not made because a fact is not stated.")
        .def_readonly("dangers", &CheckCounts::dangers, "Number of checks that found a danger.")
        .def_readonly("warnings", &CheckCounts::warnings, "Number of checks that found a warning.")
        .def_readonly("cautions", &CheckCounts::cautions, "Number of checks that found a caution.")
        .def_readonly("no_finding", &CheckCounts::no_finding,
                      "Number of checks that were made and found nothing, which promises nothing.")
        .def(py::self == py::self)
        .def("__repr__",
             [](const CheckCounts& counts) {
                 return "<CheckCounts: " + std::to_string(counts.made) + " made, " +
                        std::to_string(counts.not_made) + " not made>";
             })
        .def(py::pickle(
            [](const CheckCounts& counts) {
                return py::make_tuple(counts.made, counts.not_made, counts.dangers, counts.warnings,
                                      counts.cautions, counts.no_finding);
            },
            [](const py::tuple& state) {
                const auto count = [&state](std::size_t place) { return state[place].cast<int>(); };
                return CheckCounts{count(0), count(1), count(2), count(3), count(4), count(5)};
            }));
}

using Pairs = std::vector<std::pair<std::string, std::string>>;

Pairs pairs_of(const NotChecked& group) {
    Pairs pairs;
    for (const CheckName& check : group.checks) pairs.emplace_back(check.name, check.subject);
    return pairs;
}

void register_not_checked(py::module_& module) {
    py::class_<NotChecked>(module, "NotChecked", docs::class_not_checked)
        .def_readonly("missing", &NotChecked::missing,
                      "Names of the fields to state; empty if no field holds the fact.")
        .def_property_readonly("checks", &pairs_of, "Pairs (name, subject), one for each check.")
        .def_readonly("judged", &NotChecked::judged,
                      "Whether the checks were made nonetheless, with the usual or the worst value "
                      "of the missing facts.")
        .def(py::self == py::self)
        .def("__repr__",
             [](const NotChecked& group) {
                 return "<NotChecked: " + std::to_string(group.checks.size()) + " checks>";
             })
        .def(py::pickle(
            [](const NotChecked& group) {
                return py::make_tuple(group.missing, pairs_of(group), group.judged);
            },
            [](const py::tuple& state) {
                NotChecked group{.missing = state[0].cast<std::vector<std::string>>(),
                                 .judged = state[2].cast<bool>()};
                for (auto& [name, subject] : state[1].cast<Pairs>()) {
                    group.checks.push_back({std::move(name), std::move(subject)});
                }
                return group;
            }));
}

}  // namespace

void register_duties(py::module_& module) {
    register_code_duty(module);
    register_counts(module);
    register_not_checked(module);
}

}  // namespace heatmatch::python
