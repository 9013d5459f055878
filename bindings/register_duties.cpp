#include "pybind.hpp"

#include "heatmatch/answer/check_counts.hpp"
#include "heatmatch/match/candidate/code_duties.hpp"

namespace heatmatch::python {

namespace {

py::tuple state_of_duty(const CodeDuty& duty) {
    return py::make_tuple(duty.name, word_of(duty.code), word_of(duty.applies), duty.begins_v,
                          duty.begins_a, word_of(duty.met), duty.devices, duty.would_do, duty.state,
                          duty.said, duty.source);
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
            .met = choice_from<DutyMeans>(state[5]),
            .devices = state[6].cast<std::vector<std::string>>(),
            .would_do = state[7].cast<std::vector<std::string>>(),
            .state = state[8].cast<std::vector<std::string>>(),
            .said = state[9].cast<Sentence>(),
            .source = state[10].cast<std::string>()};
}

void register_code_duty(py::module_& module) {
    py::class_<CodeDuty>(module, "CodeDuty", "What a code asks for, and what there is for it.")
        .def_readonly("name", &CodeDuty::name, "of the duty")
        .def_property_readonly(
            "code", [](const CodeDuty& duty) { return duty.code; }, "that asks for it")
        .def_property_readonly(
            "applies", [](const CodeDuty& duty) { return duty.applies; },
            "whether it is due here; unknown counts as due")
        .def_readonly("begins_v", &CodeDuty::begins_v,
                      "cold volts that it begins at; None at any [V]")
        .def_readonly("begins_a", &CodeDuty::begins_a,
                      "or amperes, where those suffice; else None [A]")
        .def_property_readonly(
            "met", [](const CodeDuty& duty) { return duty.met; }, "what there is for it here")
        .def_readonly("devices", &CodeDuty::devices, "ids of controls that are there for it")
        .def_readonly("would_do", &CodeDuty::would_do,
                      "ids of controls of the catalog that would find it")
        .def_readonly("state", &CodeDuty::state, "fields that would tell whether it is due or met")
        .def_readonly("said", &CodeDuty::said, "what is asked, and what there is")
        .def_readonly("source", &CodeDuty::source, "key of the bibliography")
        .def("__repr__",
             [](const CodeDuty& duty) {
                 return "<CodeDuty " + duty.name + ", " + text_of_choice(duty.code) + ": " +
                        text_of_choice(duty.met) + ">";
             })
        .def(py::pickle(&state_of_duty, &duty_from));
}

void register_counts(py::module_& module) {
    py::class_<CheckCounts>(module, "CheckCounts", "How many checks were made, and their findings.")
        .def_readonly("made", &CheckCounts::made, "checks that were made")
        .def_readonly("not_made", &CheckCounts::not_made, "that lack a fact")
        .def_readonly("dangers", &CheckCounts::dangers, "of those made")
        .def_readonly("warnings", &CheckCounts::warnings, "of those made")
        .def_readonly("cautions", &CheckCounts::cautions, "of those made")
        .def_readonly("no_finding", &CheckCounts::no_finding, "of those made; it promises nothing")
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
    py::class_<NotChecked>(module, "NotChecked", "Checks that lack the same facts.")
        .def_readonly("state", &NotChecked::state, "fields to state; empty where no field tells")
        .def_property_readonly("checks", &pairs_of, "(name, subject) of each check")
        .def_readonly("judged", &NotChecked::judged,
                      "whether it was judged without them, by what is usual or as bad as may be")
        .def(py::self == py::self)
        .def("__repr__",
             [](const NotChecked& group) {
                 return "<NotChecked: " + std::to_string(group.checks.size()) + " checks>";
             })
        .def(py::pickle(
            [](const NotChecked& group) {
                return py::make_tuple(group.state, pairs_of(group), group.judged);
            },
            [](const py::tuple& state) {
                NotChecked group{.state = state[0].cast<std::vector<std::string>>(),
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
