#include "parts_view.hpp"
#include "pybind.hpp"

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/version.hpp"
#include "heatmatch/catalog/catalog.hpp"
#include "heatmatch/text/starter.hpp"

namespace heatmatch::python {

namespace {

Part part_from(const py::object& object) {
    Part part;
    bool known = false;
    const auto try_kind = [&](auto tag) {
        using P = decltype(tag);
        if (known || !py::isinstance<P>(object)) return;
        part = object.cast<P>();
        known = true;
    };
    try_kind(Panel{});
    try_kind(Element{});
    try_kind(Wire{});
    try_kind(Insulation{});
    try_kind(Control{});
    try_kind(Connector{});
    try_kind(Medium{});
    try_kind(Alloy{});
    try_kind(Sheath{});
    try_kind(Cover{});
    if (known) return part;
    throw InvalidInput(
        ErrorDetail{.part = "catalog",
                    .field = "part",
                    .value = quote(py::repr(object).cast<std::string>()),
                    .allowed = "a Panel, Element, Wire or another part",
                    .remedy = verbatim("make one as in heatmatch.Panel(id=..., v_oc=...)")});
}

void register_reports(py::module_& module) {
    py::class_<RefusedRow>(module, "RefusedRow", "A row of a file that cannot be used.")
        .def_readonly("line", &RefusedRow::line, "of the file, from 1; 0 if not known")
        .def_readonly("id", &RefusedRow::id, "of the row")
        .def_readonly("reason", &RefusedRow::reason, "why")
        .def("__repr__", [](const RefusedRow& row) { return row.reason; })
        .def(py::pickle(
            [](const RefusedRow& row) { return py::make_tuple(row.line, row.id, row.reason); },
            [](const py::tuple& state) {
                return RefusedRow{state[0].cast<std::size_t>(), state[1].cast<std::string>(),
                                  state[2].cast<std::string>()};
            }));
    py::class_<ImportReport>(module, "ImportReport", "What an import did.")
        .def_readonly("added", &ImportReport::added, "rows added")
        .def_readonly("replaced", &ImportReport::replaced, "rows replaced")
        .def_readonly("removed", &ImportReport::removed, "rows removed")
        .def_readonly("unchanged", &ImportReport::unchanged, "rows that were there already")
        .def_readonly("refused", &ImportReport::refused, "rows left out, with line and reason")
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
                                      report.unchanged, report.refused);
            },
            [](const py::tuple& state) {
                return ImportReport{state[0].cast<int>(), state[1].cast<int>(),
                                    state[2].cast<int>(), state[3].cast<int>(),
                                    state[4].cast<std::vector<RefusedRow>>()};
            }));
    py::class_<HistoryEntry>(module, "HistoryEntry", "One change of a catalog file.")
        .def_readonly("number", &HistoryEntry::number, "counted from 1")
        .def_readonly("at_utc", &HistoryEntry::at_utc, "time, ISO 8601")
        .def_readonly("action", &HistoryEntry::action, "what was done")
        .def_readonly("rows", &HistoryEntry::rows, "rows it touched")
        .def_readonly("undoes", &HistoryEntry::undoes, "entry it took back; 0 for none")
        .def_readonly("undone", &HistoryEntry::undone, "taken back since")
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

}  // namespace

void register_catalog(py::module_& module) {
    register_reports(module);
    py::class_<Catalog> cls(module, "Catalog",
                            "The starter catalog, with a file of the user's own over it.");
    cls.def_static("starter", &Catalog::starter, "The starter catalog; read-only.")
        .def_static(
            "open",
            [](const py::object& path, int wait_ms) {
                return Catalog::open(path_from(path), wait_ms);
            },
            py::arg("path"), py::pos_only(), py::kw_only(), py::arg("wait_ms") = 2000,
            "Opens the user's file over the starter; created if absent.")
        .def_property_readonly("path", &Catalog::path, "of the file; empty for the starter")
        .def(
            "is_own",
            [](const Catalog& catalog, const std::string& kind, const std::string& id) {
                return catalog.is_own(part_kind(kind).kind, id);
            },
            py::arg("kind"), py::arg("id"), py::pos_only(),
            "Whether a part is the user's own, not the starter's.")
        .def(
            "add", [](Catalog& catalog, const py::object& part) { catalog.add(part_from(part)); },
            py::arg("part"), py::pos_only(), "Adds a part; CatalogError if its id is taken.")
        .def(
            "replace",
            [](Catalog& catalog, const py::object& part) { catalog.replace(part_from(part)); },
            py::arg("part"), py::pos_only(), "Replaces the part of that id.")
        .def(
            "remove",
            [](Catalog& catalog, const std::string& kind, const std::string& id) {
                catalog.remove(part_kind(kind).kind, id);
            },
            py::arg("kind"), py::arg("id"), py::pos_only(),
            "Removes a part; refused while others name it.")
        .def(
            "parts", [](const Catalog& catalog) { return catalog.parts(); },
            "A snapshot of all parts, by value.")
        .def("close", &Catalog::close, "Closes the file; every later use is a CatalogError.")
        .def("__enter__", [](const py::object& self) { return self; })
        .def("__exit__", [](Catalog& catalog, const py::args&) { catalog.close(); })
        .def("history", &Catalog::history, "All changes of the file, oldest first.")
        .def("undo", &Catalog::undo, "Takes back the newest change, as a new entry.")
        .def(
            "save_copy",
            [](const Catalog& catalog, const py::object& path) {
                catalog.save_copy(path_from(path));
            },
            py::arg("path"), py::pos_only(), "Writes a consistent copy of the file.")
        .def(
            "import_json",
            [](Catalog& catalog, const py::object& path, bool keep_good) {
                return catalog.import_json(path_from(path), keep_good);
            },
            py::arg("path"), py::pos_only(), py::kw_only(), py::arg("keep_good") = false,
            "Puts the rows of a JSON file in; all or nothing unless keep_good.")
        .def(
            "import_json_text",
            [](Catalog& catalog, const std::string& text, bool keep_good) {
                return catalog.import_json_text(text, "JSON", keep_good);
            },
            py::arg("text"), py::pos_only(), py::kw_only(), py::arg("keep_good") = false,
            "The same from JSON text.")
        .def(
            "import_csv_text",
            [](Catalog& catalog, const std::string& kind, const std::string& text,
               const std::string& origin, bool keep_good, bool number_records) {
                return catalog.import_csv_text(part_kind(kind).kind, text, origin, keep_good,
                                               number_records);
            },
            py::arg("kind"), py::arg("text"), py::pos_only(), py::kw_only(),
            py::arg("origin") = "CSV", py::arg("keep_good") = false,
            py::arg("number_records") = false,
            "Puts rows of one kind in from CSV text whose header names fields.")
        .def(
            "import_module_csv",
            [](Catalog& catalog, const py::object& path, bool keep_good) {
                const std::string name = path_from(path);
                const py::gil_scoped_release release;
                return catalog.import_module_csv(name, keep_good);
            },
            py::arg("path"), py::pos_only(), py::kw_only(), py::arg("keep_good") = false,
            "Puts panels in from the public module-rating list.")
        .def(
            "export_json",
            [](const Catalog& catalog, const py::object& path, bool force) {
                catalog.export_json(path_from(path), force);
            },
            py::arg("path"), py::pos_only(), py::kw_only(), py::arg("force") = false,
            "Writes the user's own rows and removals as JSON; over a file that exists with force "
            "only, over a catalog never.")
        .def("export_json_text", &Catalog::export_json_text, "The same as text.")
        .def("export_all_json_text", &Catalog::export_all_json_text,
             "The whole merged view as JSON text.")
        .def("__repr__",
             [](const Catalog& catalog) {
                 return catalog.path().empty() ? std::string("Catalog.starter()")
                                               : "Catalog.open('" + catalog.path() + "')";
             })
        .def(py::pickle([](const Catalog& catalog) { return py::make_tuple(catalog.path()); },
                        [](const py::tuple& state) {
                            const auto path = state[0].cast<std::string>();
                            return path.empty() ? Catalog::starter() : Catalog::open(path);
                        }));
    add_parts_views(cls);
    module.def(
        "sources_json", [] { return std::string(sources_json()); },
        "The bibliography of the starter catalog as JSON text.");
    module.def(
        "library_version", [] { return std::string(library_version()); },
        "Version of the library.");
}

}  // namespace heatmatch::python
