#include "pybind.hpp"

#include "heatmatch/answer/drawing_labels.hpp"
#include "heatmatch/answer/first_screen.hpp"
#include "heatmatch/answer/hold_points.hpp"
#include "heatmatch/answer/margins_table.hpp"
#include "heatmatch/answer/open_points.hpp"
#include "heatmatch/answer/plan_line.hpp"

namespace heatmatch::python {

namespace {

/// Severity as its word, or None, then the line.
py::tuple line_of(const std::optional<Severity>& severity, const Sentence& said) {
    py::object word = py::none();
    if (severity) word = py::cast(*severity);
    return py::make_tuple(word, said);
}

py::dict screen_dict(const FirstScreen& screen) {
    py::list blocks;
    for (const ScreenBlock& block : screen.blocks) {
        py::list lines;
        for (const ScreenLine& line : block.lines) lines.append(line_of(line.severity, line.said));
        blocks.append(py::make_tuple(block.label, lines));
    }
    py::dict plain;
    plain["status"] = line_of(screen.status.severity, screen.status.said);
    plain["blocks"] = blocks;
    plain["others"] = screen.others;
    plain["closing"] = screen.closing;
    return plain;
}

}  // namespace

void register_first_screen(py::module_& module) {
    module.def(
        "first_screen", [](const Ranking& ranking) { return screen_dict(first_screen(ranking)); },
        py::arg("of"), "First screen as data: status, blocks, other ways, closing lines.");
    module.def(
        "first_screen",
        [](const Candidate& candidate) { return screen_dict(first_screen(candidate)); },
        py::arg("of"), "The same of one circuit.");
    module.def(
        "first_screen",
        [](const Candidate& candidate, const Ranking& ranking) {
            return screen_dict(first_screen(ranking, candidate));
        },
        py::arg("of"), py::arg("ranking"),
        "The same of a row of a ranking; the status says where it is not recommended.");
    module.def("plan_line", &plan_line, py::arg("plan").none(true),
               "A plan in one line; without one the command that makes it.");
    module.def(
        "hold_points_table",
        [](const std::vector<const Candidate*>& circuits) { return hold_points_table(circuits); },
        py::arg("circuits"), "Licensed and live work at circuits: job, hold point, person.");
    module.def(
        "drawing_labels",
        [](const Candidate& candidate) {
            const DrawingLabels labels = drawing_labels(candidate);
            py::dict plain;
            plain["array"] = labels.array;
            plain["bank"] = labels.bank;
            plain["working"] = labels.working;
            plain["runs"] = labels.runs;
            plain["devices"] = labels.devices;
            return plain;
        },
        py::arg("candidate"), "What is written at each part of the drawing of a circuit.");
    module.def("store_labels", &store_labels, py::arg("candidate"),
               "What lies where in the store; empty without one.");
    module.def("no_finding_line", &no_finding_line, py::arg("candidate"),
               "How many margins have no finding; empty if none has.");
    module.def("severity_mark", &severity_mark, py::arg("severity"),
               "The mark of a severity beside its word.");
    module.def("building_mark", &building_mark, py::arg("candidate"),
               "The mark of drawings and wiring lists: not for building; may be empty.");
    module.def(
        "open_points",
        [](const Candidate& candidate) {
            py::list points;
            for (const OpenPoint& point : open_points(candidate)) {
                points.append(line_of(point.severity, point.said));
            }
            return points;
        },
        py::arg("candidate"), "What must be there or stated before a circuit may be built.");
}

}  // namespace heatmatch::python
