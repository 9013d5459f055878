#include "parts_view.hpp"
#include "state.hpp"

#include "heatmatch/catalog/catalog.hpp"
#include "heatmatch/match/candidate/wire_check.hpp"
#include "heatmatch/text/part_json.hpp"

namespace heatmatch::python {

namespace {

py::tuple wire_limit_state(const WireLimit& limit) {
    return py::make_tuple(text_of_choice(limit.what), limit.limit_c,
                          static_cast<int>(limit.consequence), limit.source);
}

WireLimit wire_limit_from(const py::tuple& state) {
    return {.what = state[0].cast<WirePart>(),
            .limit_c = state[1].cast<double>(),
            .consequence = static_cast<Severity>(state[2].cast<int>()),
            .source = state[3].cast<std::string>()};
}

py::tuple reach_state(const InsulationReach& reach) {
    return py::make_tuple(reach.insulation, reach.family, reach.limit_c, reach.from_m);
}

InsulationReach insulation_reach_from(const py::tuple& state) {
    return {.insulation = state[0].cast<std::string>(),
            .family = state[1].cast<std::string>(),
            .limit_c = state[2].cast<double>(),
            .from_m = state[3].cast<std::optional<double>>()};
}

template <class Item>
py::tuple states_of(const std::vector<Item>& items, py::tuple (*state)(const Item&)) {
    py::tuple states(items.size());
    for (std::size_t i = 0; i < items.size(); ++i) states[i] = state(items[i]);
    return states;
}

py::tuple wire_check_state(const WireCheck& check) {
    py::object would_do = py::none();
    if (check.would_do) would_do = py::str(part_to_json(Part{*check.would_do}, -1));
    return py::make_tuple(check.run, check.wire, check.gauge, check.current_a, check.conductor_c,
                          check.far_c, check.runaway, states_of(check.limits, wire_limit_state),
                          text_of_choice(check.decides), static_cast<int>(check.severity),
                          check.code_ampacity_a, check.corrected_ampacity_a,
                          check.balance_ampacity_a, check.drop_v, check.heat_w, check.at_element,
                          states_of(check.reach, reach_state), check.sentence, would_do,
                          check.would_do_gauge, assumption_states(check.assumed));
}

WireCheck wire_check_from(const py::tuple& state) {
    using Maybe = std::optional<double>;
    WireCheck check{.run = state[0].cast<std::string>(),
                    .wire = state[1].cast<std::string>(),
                    .gauge = state[2].cast<Sentence>(),
                    .current_a = state[3].cast<double>(),
                    .conductor_c = state[4].cast<Maybe>(),
                    .far_c = state[5].cast<Maybe>(),
                    .runaway = state[6].cast<bool>(),
                    .limits = items_from(state[7], wire_limit_from),
                    .decides = find_choice<WirePart>(state[8].cast<std::string>()),
                    .severity = static_cast<Severity>(state[9].cast<int>()),
                    .code_ampacity_a = state[10].cast<Maybe>(),
                    .corrected_ampacity_a = state[11].cast<Maybe>(),
                    .balance_ampacity_a = state[12].cast<Maybe>(),
                    .drop_v = state[13].cast<double>(),
                    .heat_w = state[14].cast<double>(),
                    .at_element = state[15].cast<bool>(),
                    .reach = items_from(state[16], insulation_reach_from),
                    .sentence = state[17].cast<Sentence>(),
                    .would_do_gauge = state[19].cast<Sentence>(),
                    .assumed = assumptions_from(state[20])};
    if (!state[18].is_none()) {
        check.would_do =
            std::get<Wire>(part_from_json(PartKind::wire, state[18].cast<std::string>()));
    }
    return check;
}

void register_limits(py::module_& module) {
    py::class_<WireLimit>(module, "WireLimit", "One limit of a run of wire.")
        .def_readonly("what", &WireLimit::what, "part of the run: insulation, plating or joint")
        .def_readonly("limit_c", &WireLimit::limit_c, "temperature limit [°C]")
        .def_property_readonly(
            "consequence", [](const WireLimit& limit) { return limit.consequence; },
            "severity beyond the limit")
        .def_readonly("source", &WireLimit::source, "source of the limit")
        .def("__repr__",
             [](const WireLimit& limit) {
                 return "<WireLimit " + text_of_choice(limit.what) + ": " +
                        format_number(limit.limit_c, 4) + " °C>";
             })
        .def(py::pickle([](const WireLimit& limit) { return wire_limit_state(limit); },
                        &wire_limit_from));
    py::class_<InsulationReach>(module, "InsulationReach",
                                "From where along the wire an insulation would do.")
        .def_readonly("insulation", &InsulationReach::insulation, "id of the insulation")
        .def_readonly("family", &InsulationReach::family, "family of the insulation")
        .def_readonly("limit_c", &InsulationReach::limit_c,
                      "temperature rating of the insulation [°C]")
        .def_readonly(
            "from_m", &InsulationReach::from_m,
            "distance from the terminal from which it would do [m]; None: nowhere on this run")
        .def("__repr__",
             [](const InsulationReach& reach) {
                 return "<InsulationReach " + reach.insulation +
                        (reach.from_m ? ": from " + format_number(*reach.from_m, 3) + " m>"
                                      : ": nowhere>");
             })
        .def(py::pickle([](const InsulationReach& reach) { return reach_state(reach); },
                        &insulation_reach_from));
}

}  // namespace

std::vector<WireCheck> checked_wires(const Candidate& candidate, const Catalog* catalog) {
    const auto parts = catalog == nullptr ? nullptr : snapshot_of(*catalog);
    const py::gil_scoped_release release;
    return check_wires(candidate, parts.get());
}

void register_wire_check(py::module_& module) {
    register_limits(module);
    using Check = WireCheck;
    py::class_<Check>(module, "WireCheck",
                      "One run: how hot it gets, what melts, and which wire would do.")
        .def_readonly("run", &Check::run, "name of the run")
        .def_readonly("wire", &Check::wire, "id of the wire; empty if none was found")
        .def_readonly("gauge", &Check::gauge, "area of the conductor, in US units its gauge")
        .def_readonly("current_a", &Check::current_a,
                      "short-circuit current in the brightest sun [A]")
        .def_readonly("conductor_c", &Check::conductor_c,
                      "conductor temperature at its hottest place [°C], or None")
        .def_readonly("far_c", &Check::far_c,
                      "conductor temperature away from the element [°C], or None")
        .def_readonly("runaway", &Check::runaway, "whether there is no steady temperature")
        .def_readonly("limits", &Check::limits, "limits, lowest first")
        .def_property_readonly(
            "decides",
            [](const Check& check) {
                return check.decides ? py::cast(*check.decides) : py::object(py::str());
            },
            "part with the lowest limit; empty if there is none")
        .def_property_readonly(
            "severity", [](const Check& check) { return check.severity; },
            "severity at its hottest place")
        .def_readonly("code_ampacity_a", &Check::code_ampacity_a,
                      "ampacity by the table of the code, before correction [A], or None")
        .def_readonly("corrected_ampacity_a", &Check::corrected_ampacity_a,
                      "ampacity corrected for the temperature around it [A], or None")
        .def_readonly("balance_ampacity_a", &Check::balance_ampacity_a,
                      "current that its heat balance allows at its limit [A], or None")
        .def_readonly("drop_v", &Check::drop_v, "voltage drop out and back, joints included [V]")
        .def_readonly("heat_w", &Check::heat_w, "heat made in the run [W]")
        .def_readonly("at_element", &Check::at_element, "whether heat of the element reaches it")
        .def_readonly("reach", &Check::reach,
                      "for a run at the element: distance from which each insulation would do")
        .def_readonly("sentence", &Check::sentence, "the result in one sentence")
        .def_readonly("would_do", &Check::would_do,
                      "cheapest wire that would do where this one does not, or None")
        .def_readonly("would_do_gauge", &Check::would_do_gauge,
                      "area of that conductor, in US units its gauge")
        .def_property_readonly(
            "assumed", [](const Check& check) { return texts_of(check.assumed); },
            "assumptions that were made")
        .def("__repr__",
             [](const Check& check) {
                 return "<WireCheck " + check.run + ": " + check.sentence.text() + ">";
             })
        .def(py::pickle([](const Check& check) { return wire_check_state(check); },
                        &wire_check_from));
}

}  // namespace heatmatch::python
