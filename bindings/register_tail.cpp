#include "docs_classes.hpp"
#include "docs_tail.hpp"
#include "tail.hpp"

#include "heatmatch/match/margins/element_margins.hpp"
#include "heatmatch/match/margins/sheath_margins.hpp"

namespace heatmatch::python {

namespace {

StoreTerminals terminals_of(const CandidateTail& tail) {
    const TerminalPlace place = tail.tail.tail.place;
    if (place == TerminalPlace::buried) return StoreTerminals::buried;
    return place == TerminalPlace::in_box ? StoreTerminals::box_outside
                                          : StoreTerminals::through_wall;
}

py::tuple tail_state(const CandidateTail& tail) {
    return py::make_tuple(state_of(tail.circuit), state_of(tail.bright));
}

CandidateTail tail_from(const py::tuple& state) {
    return *candidate_tail(circuit_from(state[0].cast<py::tuple>()),
                           extremes_from(state[1].cast<py::tuple>()));
}

}  // namespace

std::optional<CandidateTail> candidate_tail(Circuit circuit, const Extremes& bright) {
    if (circuit.bank.unlike) {  // that of the element with the hottest terminal
        std::optional<CandidateTail> hottest;
        for (ElementSeen& one : elements_seen(circuit, bright)) {
            auto tail = candidate_tail(std::move(one.circuit), one.bright);
            if (!tail) return std::nullopt;
            const bool hotter = !hottest || tail->at.terminal_c > hottest->at.terminal_c;
            if (hotter) hottest.emplace(std::move(*tail));
        }
        return hottest;
    }
    auto at = tail_of(circuit, bright, heat_of(circuit, bright));
    if (!at) return std::nullopt;
    TailHeat tail = tail_heat(circuit);
    return CandidateTail{std::move(circuit), bright, std::move(tail), std::move(*at)};
}

void register_tail(py::module_& module) {
    py::class_<CandidateTail>(module, "HotTail", docs::class_hot_tail)
        .def_property_readonly(
            "run", [](const CandidateTail& tail) { return tail.tail.run; },
            "Name of the run of wire at the element.")
        .def_property_readonly(
            "terminals", &terminals_of,
            "Place of the terminals: \"buried\", \"box outside\" or \"through wall\".")
        .def_property_readonly(
            "heated_end_c", [](const CandidateTail& tail) { return tail.at.heated_end_c; },
            "Temperature at the end of the heated length [°C].")
        .def_property_readonly(
            "wall_c", [](const CandidateTail& tail) { return tail.at.wall_c; },
            "Temperature where the sheath leaves the bed [°C]; None if the terminals are buried.")
        .def_property_readonly(
            "terminal_c", [](const CandidateTail& tail) { return tail.at.terminal_c; },
            "Temperature of the terminal [°C].")
        .def_property_readonly(
            "air_c", [](const CandidateTail& tail) { return tail.at.air_c; },
            "Temperature of the air around terminal and wire [°C].")
        .def_property_readonly(
            "box_c", [](const CandidateTail& tail) { return tail.at.box_c; },
            "Temperature of the air in the terminal box [°C]; None without a box.")
        .def_property_readonly(
            "far_wire_c", [](const CandidateTail& tail) { return tail.at.far_wire_c; },
            "Temperature of the wire far from the element [°C].")
        .def_property_readonly(
            "terminal_distance_m",
            [](const CandidateTail& tail) { return tail.at.terminal_distance_m; },
            "Distance from the end of the heated length to the terminal [m].")
        .def_property_readonly(
            "runaway", [](const CandidateTail& tail) { return tail.at.runaway; },
            "Whether the wire has no steady temperature; no other value holds then.")
        .def_property_readonly(
            "assumed",
            [](const CandidateTail& tail) {
                std::vector<Assumption> all = tail.tail.assumed;
                all.insert(all.end(), tail.at.assumed.begin(), tail.at.assumed.end());
                return texts_of(all);
            },
            "Assumptions, one sentence each.")
        .def(
            "wire_c",
            [](const CandidateTail& tail, const py::object& from_terminal_m) {
                return map_numbers(from_terminal_m, "from_terminal_m", [&](double metres) {
                    check_argument("from_terminal_m", metres, unit::metre,
                                   {.low = 0.0, .high = 1000.0});
                    return tail.at.wire_c(metres);
                });
            },
            py::arg("from_terminal_m"), docs::tail_wire_c)
        .def(
            "distance_for_limit_m",
            [](const CandidateTail& tail, double limit_c) {
                check_argument("limit_c", limit_c, unit::celsius, {.low = -60.0, .high = 2000.0});
                return tail.at.distance_for_limit_m(limit_c);
            },
            py::arg("limit_c"), docs::tail_distance_for_limit_m)
        .def("__repr__",
             [](const CandidateTail& tail) {
                 return "<HotTail " + text_of_choice(terminals_of(tail)) +
                        (tail.at.runaway
                             ? ": runaway>"
                             : ": terminal " + format_number(tail.at.terminal_c, 4) + " °C>");
             })
        .def(py::pickle([](const CandidateTail& tail) { return tail_state(tail); }, &tail_from));
}

}  // namespace heatmatch::python
