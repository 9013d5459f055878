#include "state.hpp"

#include "heatmatch/match/circuit/element_view.hpp"
#include "heatmatch/match/circuit/unlike_bank.hpp"
#include "heatmatch/text/part_json.hpp"

namespace heatmatch::python {

namespace {

py::tuple group_state(const OwnedPanels& owned, const PanelInService& panel) {
    return py::make_tuple(state_of(owned), part_to_json(Part{panel.given}, -1), panel.record_low_c);
}

PanelInService panel_from(const py::tuple& state, const OwnedPanels& owned) {
    return panel_in_service(owned, *part_from<Panel>(PartKind::panel, state[1]),
                            state[2].cast<double>());
}

py::object unlike_state(const Circuit& circuit) {
    if (!circuit.unlike) return py::none();
    py::list groups;
    for (const GroupInArray& group : circuit.unlike->groups) {
        groups.append(py::make_tuple(group_state(group.owned, group.panel), group.count));
    }
    return py::make_tuple(circuit.unlike->layout.text(), groups, circuit.unlike->strings);
}

std::shared_ptr<const UnlikeArray> unlike_from(const py::object& state) {
    if (state.is_none()) return nullptr;
    const auto parts = state.cast<py::tuple>();
    auto array = std::make_shared<UnlikeArray>();
    array->layout = Layout::parse(parts[0].cast<std::string>(), "circuit", "array");
    for (const py::handle item : parts[1].cast<py::list>()) {
        const auto group = item.cast<py::tuple>();
        const auto panel = group[0].cast<py::tuple>();
        const OwnedPanels owned = owned_panels_from(panel[0].cast<py::tuple>());
        array->groups.push_back(
            {.owned = owned, .panel = panel_from(panel, owned), .count = group[1].cast<int>()});
    }
    array->strings = parts[2].cast<std::vector<std::vector<std::size_t>>>();
    return array;
}

}  // namespace

py::tuple state_of(const Circuit& circuit) {
    py::object heat = py::none();
    if (circuit.heat) heat = state_of(*circuit.heat);
    py::object equal = py::none();
    if (!circuit.unlike) equal = group_state(circuit.owned, circuit.panel);
    return py::make_tuple(equal, unlike_state(circuit), circuit.panels.series,
                          circuit.panels.parallel, state_of(circuit.bank), states_of(circuit.runs),
                          states_of(circuit.devices), heat, circuit.name);
}

Circuit circuit_from(const py::tuple& state) {
    Circuit circuit{
        .panels = {.series = state[2].cast<int>(), .parallel = state[3].cast<int>()},
        .unlike = unlike_from(state[1]),
        .bank = bank_from(state[4].cast<py::tuple>()),
        .runs = items_from(state[5], run_parts_from),
        .devices = items_from(state[6], placed_device_from),
        .heat = state[7].is_none() ? nullptr : bank_heat_from(state[7].cast<py::tuple>()),
        .name = state[8].cast<std::string>()};
    if (!state[0].is_none()) {
        const auto equal = state[0].cast<py::tuple>();
        circuit.owned = owned_panels_from(equal[0].cast<py::tuple>());
        circuit.panel = panel_from(equal, circuit.owned);
    }
    return circuit;
}

}  // namespace heatmatch::python
