#include "docs_classes.hpp"
#include "docs_classes_more.hpp"
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
    py::object wire_state = py::none();
    if (check.sufficient_wire) wire_state = py::str(part_to_json(Part{*check.sufficient_wire}, -1));
    return py::make_tuple(check.run, check.wire, check.gauge, check.current_a, check.conductor_c,
                          check.far_c, check.runaway, states_of(check.limits, wire_limit_state),
                          text_of_choice(check.limiting_part), static_cast<int>(check.severity),
                          check.code_ampacity_a, check.corrected_ampacity_a,
                          check.balance_ampacity_a, check.drop_v, check.heat_w, check.at_element,
                          states_of(check.reach, reach_state), check.sentence, wire_state,
                          check.sufficient_gauge, assumption_states(check.assumed));
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
                    .limiting_part = find_choice<WirePart>(state[8].cast<std::string>()),
                    .severity = static_cast<Severity>(state[9].cast<int>()),
                    .code_ampacity_a = state[10].cast<Maybe>(),
                    .corrected_ampacity_a = state[11].cast<Maybe>(),
                    .balance_ampacity_a = state[12].cast<Maybe>(),
                    .drop_v = state[13].cast<double>(),
                    .heat_w = state[14].cast<double>(),
                    .at_element = state[15].cast<bool>(),
                    .reach = items_from(state[16], insulation_reach_from),
                    .sentence = state[17].cast<Sentence>(),
                    .sufficient_gauge = state[19].cast<Sentence>(),
                    .assumed = assumptions_from(state[20])};
    if (!state[18].is_none()) {
        check.sufficient_wire =
            std::get<Wire>(part_from_json(PartKind::wire, state[18].cast<std::string>()));
    }
    return check;
}

void register_limits(py::module_& module) {
    py::class_<WireLimit>(module, "WireLimit", docs::class_wire_limit)
        .def_readonly("what", &WireLimit::what,
                      "Part of the run: \"insulation\", \"joint\" or \"plating\".")
        .def_readonly("limit_c", &WireLimit::limit_c, "Temperature limit [°C].")
        .def_property_readonly(
            "consequence", [](const WireLimit& limit) { return limit.consequence; },
            "Severity above the limit: \"caution\", \"warning\" or \"danger\".")
        .def_readonly("source", &WireLimit::source,
                      "Source of the limit: a key of ``sources``, or words.")
        .def("__repr__",
             [](const WireLimit& limit) {
                 return "<WireLimit " + text_of_choice(limit.what) + ": " +
                        format_number(limit.limit_c, 4) + " °C>";
             })
        .def(py::pickle([](const WireLimit& limit) { return wire_limit_state(limit); },
                        &wire_limit_from));
    py::class_<InsulationReach>(module, "InsulationReach", docs::class_insulation_reach)
        .def_readonly("insulation", &InsulationReach::insulation, "Id of the insulation.")
        .def_readonly("family", &InsulationReach::family, "Material of the insulation.")
        .def_readonly("limit_c", &InsulationReach::limit_c,
                      "Temperature rating of the insulation [°C].")
        .def_readonly("from_m", &InsulationReach::from_m,
                      "Distance from the terminal beyond which the insulation stays within its "
                      "rating [m]; None if it does nowhere on this run.")
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
    py::class_<Check>(module, "WireCheck", docs::class_wire_check)
        .def_readonly("run", &Check::run, "Name of the run.")
        .def_readonly("wire", &Check::wire, "Id of the wire; empty if none was found.")
        .def_readonly(
            "gauge", &Check::gauge,
            "Cross-section of the conductor in words, such as \"2.08 mm2\"; in US units its gauge.")
        .def_readonly("current_a", &Check::current_a,
                      "Short-circuit current in the brightest sun [A].")
        .def_readonly("conductor_c", &Check::conductor_c,
                      "Conductor temperature at its hottest place [°C]; None if the surroundings "
                      "are not known.")
        .def_readonly("far_c", &Check::far_c,
                      "Conductor temperature away from the element [°C]; None if the surroundings "
                      "are not known.")
        .def_readonly("runaway", &Check::runaway, "Whether there is no steady temperature.")
        .def_readonly("limits", &Check::limits,
                      "Temperature limits of the run's parts, the lowest first.")
        .def_property_readonly(
            "limiting_part",
            [](const Check& check) {
                return check.limiting_part ? py::cast(*check.limiting_part) : py::object(py::str());
            },
            "Part with the lowest limit: \"insulation\", \"joint\" or \"plating\"; empty if no "
            "limit is known.")
        .def_property_readonly(
            "severity", [](const Check& check) { return check.severity; },
            "Severity at the hottest place: \"none\", \"caution\", \"warning\", \"danger\" or "
            "\"not assessed\".")
        .def_readonly(
            "code_ampacity_a", &Check::code_ampacity_a,
            "Ampacity in the table of the code, before correction [A]; None if no table applies.")
        .def_readonly(
            "corrected_ampacity_a", &Check::corrected_ampacity_a,
            "Ampacity corrected for the temperature around the run [A]; None if no table applies.")
        .def_readonly(
            "balance_ampacity_a", &Check::balance_ampacity_a,
            "Current at which the wire's heat balance reaches its limit [A]; None if not known.")
        .def_readonly("drop_v", &Check::drop_v,
                      "Voltage drop of both conductors, joints included [V].")
        .def_readonly("heat_w", &Check::heat_w, "Power lost as heat in the run [W].")
        .def_readonly("at_element", &Check::at_element,
                      "Whether heat of the element reaches the run.")
        .def_readonly("reach", &Check::reach,
                      "Distance from which each insulation is suitable, coolest first; empty for a "
                      "run away from the element.")
        .def_readonly("sentence", &Check::sentence, "Result in one sentence.")
        .def_readonly(
            "sufficient_wire", &Check::sufficient_wire,
            "Cheapest suitable wire where this one is not suitable; None if there is none, or "
            "this one does.")
        .def_readonly("sufficient_gauge", &Check::sufficient_gauge,
                      "Cross-section of that conductor in words; in US units its gauge.")
        .def_property_readonly(
            "assumed", [](const Check& check) { return texts_of(check.assumed); },
            "Assumptions, one sentence each.")
        .def("__repr__",
             [](const Check& check) {
                 return "<WireCheck " + check.run + ": " + check.sentence.text() + ">";
             })
        .def(py::pickle([](const Check& check) { return wire_check_state(check); },
                        &wire_check_from));
}

}  // namespace heatmatch::python
