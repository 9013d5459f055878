#include "docs_classes.hpp"
#include "docs_classes_more.hpp"
#include "parts_view.hpp"
#include "pybind.hpp"

#include "heatmatch/catalog/catalog.hpp"

namespace heatmatch::python {

void register_catalog_reports(py::module_& module) {
    py::class_<RefusedRow>(module, "RefusedRow", docs::class_refused_row)
        .def_readonly("line", &RefusedRow::line, "Line of the file, from 1; 0 if not known.")
        .def_readonly("id", &RefusedRow::id, "Id of the part in the row; empty if not known.")
        .def_readonly("reason", &RefusedRow::reason, "Reason why the row cannot be used.")
        .def("__repr__", [](const RefusedRow& row) { return row.reason; })
        .def(py::pickle(
            [](const RefusedRow& row) { return py::make_tuple(row.line, row.id, row.reason); },
            [](const py::tuple& state) {
                return RefusedRow{state[0].cast<std::size_t>(), state[1].cast<std::string>(),
                                  state[2].cast<std::string>()};
            }));
    py::class_<ImportReport>(module, "ImportReport", docs::class_import_report)
        .def_readonly("added", &ImportReport::added, "Number of rows added.")
        .def_readonly("replaced", &ImportReport::replaced, "Number of rows replaced.")
        .def_readonly("removed", &ImportReport::removed, "Number of rows removed.")
        .def_readonly("unchanged", &ImportReport::unchanged,
                      "Number of rows that were there already.")
        .def_readonly("entry", &ImportReport::entry,
                      "Number of the import in the history; 0 if nothing was changed.")
        .def_readonly("refused", &ImportReport::refused,
                      "Rows left out, with line and reason; empty unless `keep_good` was given.")
        .def("__repr__",
             [](const ImportReport& report) {
                 return "ImportReport(added=" + std::to_string(report.added) +
                        ", replaced=" + std::to_string(report.replaced) +
                        ", removed=" + std::to_string(report.removed) +
                        ", unchanged=" + std::to_string(report.unchanged) +
                        ", refused=" + std::to_string(report.refused.size()) + ')';
             })
        .def(py::pickle(
            [](const ImportReport& report) {
                return py::make_tuple(report.added, report.replaced, report.removed,
                                      report.unchanged, report.entry, report.refused);
            },
            [](const py::tuple& state) {
                return ImportReport{state[0].cast<int>(), state[1].cast<int>(),
                                    state[2].cast<int>(), state[3].cast<int>(),
                                    state[4].cast<int>(), state[5].cast<std::vector<RefusedRow>>()};
            }));
    py::class_<HistoryEntry>(module, "HistoryEntry", docs::class_history_entry)
        .def_readonly("number", &HistoryEntry::number, "Number of the entry, from 1.")
        .def_readonly("at_utc", &HistoryEntry::at_utc, "Time of the change in UTC, as ISO 8601.")
        .def_readonly("action", &HistoryEntry::action,
                      "Change in words, such as 'replace panel \"barn-pair\"'.")
        .def_readonly("rows", &HistoryEntry::rows, "Number of rows changed.")
        .def_readonly("undoes", &HistoryEntry::undoes,
                      "Number of the entry that this one undid; 0 for none.")
        .def_readonly("undone", &HistoryEntry::undone, "Whether a later entry undid it.")
        .def("__repr__",
             [](const HistoryEntry& entry) {
                 return std::to_string(entry.number) + ' ' + entry.at_utc + ' ' + entry.action +
                        (entry.undone ? " (undone)" : "");
             })
        .def(py::pickle(
            [](const HistoryEntry& entry) {
                return py::make_tuple(entry.number, entry.at_utc, entry.action, entry.rows,
                                      entry.undoes, entry.undone);
            },
            [](const py::tuple& state) {
                return HistoryEntry{state[0].cast<int>(),         state[1].cast<std::string>(),
                                    state[2].cast<std::string>(), state[3].cast<int>(),
                                    state[4].cast<int>(),         state[5].cast<bool>()};
            }));
}

}  // namespace heatmatch::python
