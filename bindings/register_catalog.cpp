#include "pybind.hpp"

#include "heatmatch/base/error.hpp"
#include "heatmatch/catalog/catalog.hpp"

namespace heatmatch::python {

namespace {

/// Any part as the Python object of its kind.
py::object part_object(const Part& part) {
    return std::visit([](const auto& record) { return py::cast(record); }, part);
}

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
    throw InvalidInput(ErrorDetail{.part = "catalog",
                                   .field = "part",
                                   .value = quote(py::repr(object).cast<std::string>()),
                                   .allowed = "a Panel, Element, Wire or another part",
                                   .remedy = "make one as in heatmatch.Panel(id=..., v_oc=...)"});
}

std::string path_text(const py::object& path) {
    return py::module_::import("os").attr("fspath")(path).cast<std::string>();
}

/// The parts of one kind as a mapping from id.
struct PartsView {
    py::object owner;  //!< the Catalog, kept alive
    PartKind kind = PartKind::panel;

    [[nodiscard]] std::shared_ptr<const Parts> snapshot() const {
        return owner.cast<const Catalog&>().snapshot();
    }
    [[nodiscard]] std::vector<std::string> ids() const {
        std::vector<std::string> ids;
        for_each_list(*snapshot(), [&](const auto& list, PartKind listed) {
            if (listed != kind) return;
            for (const auto& part : list) ids.push_back(part.id);
        });
        return ids;
    }
};

py::object get_part(const PartsView& view, const std::string& id) {
    const auto parts = view.snapshot();
    if (const auto found = parts->find(view.kind, id)) return part_object(*found);
    // Throws the NotFound that names the nearest id.
    switch (view.kind) {
        case PartKind::panel:
            return py::cast(find_panel(*parts, id));
        case PartKind::element:
            return py::cast(find_element(*parts, id));
        case PartKind::wire:
            return py::cast(find_wire(*parts, id));
        case PartKind::insulation:
            return py::cast(find_insulation(*parts, id));
        case PartKind::control:
            return py::cast(find_control(*parts, id));
        case PartKind::connector:
            return py::cast(find_connector(*parts, id));
        case PartKind::medium:
            return py::cast(find_medium(*parts, id));
        case PartKind::alloy:
            return py::cast(find_alloy(*parts, id));
        case PartKind::sheath:
            return py::cast(find_sheath(*parts, id));
        case PartKind::cover:
            break;
    }
    return py::cast(find_cover(*parts, id));
}

void register_view(py::module_& module) {
    py::class_<PartsView>(module, "PartsView", "The parts of one kind, as a mapping from id.")
        .def("__getitem__", &get_part, py::arg("id"), py::pos_only())
        .def("__len__", [](const PartsView& view) { return view.ids().size(); })
        .def(
            "__contains__",
            [](const PartsView& view, const py::object& id) {
                return py::isinstance<py::str>(id) &&
                       view.snapshot()->find(view.kind, id.cast<std::string>()).has_value();
            },
            py::arg("id"), py::pos_only())
        .def("__iter__", [](const PartsView& view) { return py::iter(py::cast(view.ids())); })
        .def("keys", &PartsView::ids, "Ids in order.")
        .def(
            "values",
            [](const PartsView& view) {
                py::list parts;
                for_each_list(*view.snapshot(), [&](const auto& list, PartKind listed) {
                    if (listed != view.kind) return;
                    for (const auto& part : list) parts.append(py::cast(part));
                });
                return parts;
            },
            "Parts in order of id.")
        .def(
            "items",
            [](const PartsView& view) {
                py::list items;
                for (const std::string& id : view.ids()) {
                    items.append(py::make_tuple(id, get_part(view, id)));
                }
                return items;
            },
            "Pairs of id and part.")
        .def(
            "get",
            [](const PartsView& view, const std::string& id, const py::object& otherwise) {
                const auto found = view.snapshot()->find(view.kind, id);
                return found ? part_object(*found) : otherwise;
            },
            py::arg("id"), py::arg("default") = py::none(), py::pos_only(),
            "The part of that id, or the default.")
        .def_property_readonly(
            "kind", [](const PartsView& view) { return std::string(part_kind(view.kind).name); },
            "kind of part")
        .def("__repr__", [](const PartsView& view) {
            const std::vector<std::string> ids = view.ids();
            constexpr std::size_t shown = 5;
            std::string text = "<" + std::to_string(ids.size()) + ' ' +
                               std::string(part_kind(view.kind).plural) + ":";
            for (std::size_t i = 0; i < ids.size() && i < shown; ++i) text += ' ' + ids[i];
            return text + (ids.size() > shown ? " ...>" : ">");
        });
}

void register_reports(py::module_& module) {
    py::class_<RefusedRow>(module, "RefusedRow", "A row of a file that cannot be used.")
        .def_readonly("line", &RefusedRow::line, "of the file, from 1; 0 if not known")
        .def_readonly("id", &RefusedRow::id, "of the row")
        .def_readonly("reason", &RefusedRow::reason, "why")
        .def("__repr__", [](const RefusedRow& row) { return row.reason; });
    py::class_<ImportReport>(module, "ImportReport", "What an import did.")
        .def_readonly("added", &ImportReport::added, "rows added")
        .def_readonly("replaced", &ImportReport::replaced, "rows replaced")
        .def_readonly("removed", &ImportReport::removed, "rows removed")
        .def_readonly("unchanged", &ImportReport::unchanged, "rows that were there already")
        .def_readonly("refused", &ImportReport::refused, "rows left out, with line and reason")
        .def("__repr__", [](const ImportReport& report) {
            return "ImportReport(added=" + std::to_string(report.added) +
                   ", replaced=" + std::to_string(report.replaced) +
                   ", removed=" + std::to_string(report.removed) +
                   ", unchanged=" + std::to_string(report.unchanged) +
                   ", refused=" + std::to_string(report.refused.size()) + ')';
        });
    py::class_<HistoryEntry>(module, "HistoryEntry", "One change of a catalog file.")
        .def_readonly("number", &HistoryEntry::number, "counted from 1")
        .def_readonly("at_utc", &HistoryEntry::at_utc, "time, ISO 8601")
        .def_readonly("action", &HistoryEntry::action, "what was done")
        .def_readonly("rows", &HistoryEntry::rows, "rows it touched")
        .def_readonly("undoes", &HistoryEntry::undoes, "entry it took back; 0 for none")
        .def_readonly("undone", &HistoryEntry::undone, "taken back since")
        .def("__repr__", [](const HistoryEntry& entry) {
            return std::to_string(entry.number) + ' ' + entry.at_utc + ' ' + entry.action +
                   (entry.undone ? " (undone)" : "");
        });
}

}  // namespace

void register_catalog(py::module_& module) {
    register_view(module);
    register_reports(module);
    py::class_<Catalog> cls(module, "Catalog",
                            "The starter catalog, with a file of the user's own over it.");
    cls.def_static("starter", &Catalog::starter, "The starter catalog; read-only.")
        .def_static(
            "open",
            [](const py::object& path, int wait_ms) {
                return Catalog::open(path_text(path), wait_ms);
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
        .def("history", &Catalog::history, "All changes of the file, oldest first.")
        .def("undo", &Catalog::undo, "Takes back the newest change, as a new entry.")
        .def(
            "save_copy",
            [](const Catalog& catalog, const py::object& path) {
                catalog.save_copy(path_text(path));
            },
            py::arg("path"), py::pos_only(), "Writes a consistent copy of the file.")
        .def(
            "import_json",
            [](Catalog& catalog, const py::object& path, bool keep_good) {
                return catalog.import_json(path_text(path), keep_good);
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
               const std::string& origin, bool keep_good) {
                return catalog.import_csv_text(part_kind(kind).kind, text, origin, keep_good);
            },
            py::arg("kind"), py::arg("text"), py::pos_only(), py::kw_only(),
            py::arg("origin") = "CSV", py::arg("keep_good") = false,
            "Puts rows of one kind in from CSV text whose header names fields.")
        .def(
            "import_module_csv",
            [](Catalog& catalog, const py::object& path, bool keep_good) {
                const std::string name = path_text(path);
                const py::gil_scoped_release release;
                return catalog.import_module_csv(name, keep_good);
            },
            py::arg("path"), py::pos_only(), py::kw_only(), py::arg("keep_good") = false,
            "Puts panels in from the public module-rating list.")
        .def(
            "export_json",
            [](const Catalog& catalog, const py::object& path) {
                catalog.export_json(path_text(path));
            },
            py::arg("path"), py::pos_only(), "Writes the user's own rows and removals as JSON.")
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
    for (const PartKindInfo& info : part_kinds()) {
        const std::string doc = "The " + std::string(info.plural) + " by id.";
        cls.def_property_readonly(
            std::string(info.plural).c_str(),
            [kind = info.kind](const py::object& self) {
                return PartsView{self, kind};
            },
            doc.c_str());
    }
    module.def(
        "sources_json", [] { return std::string(sources_json()); },
        "The bibliography of the starter catalog as JSON text.");
    module.def(
        "library_version", [] { return std::string(library_version()); },
        "Version of the library.");
    module.def(
        "glossary",
        [] {
            py::dict all;
            for (const PartKindInfo& info : part_kinds()) {
                py::list fields;
                for (const Field& field : info.fields) {
                    py::list words;
                    for (const std::string_view word : field.words) words.append(std::string(word));
                    py::list columns;
                    for (const Column& column : field.columns) {
                        columns.append(py::make_tuple(std::string(column.name),
                                                      std::string(column.unit.symbol),
                                                      std::string(column.meaning)));
                    }
                    py::dict entry;
                    entry["name"] = std::string(field.name);
                    entry["kind"] = static_cast<int>(field.kind);
                    entry["unit"] = std::string(field.unit.symbol);
                    entry["range"] =
                        field.kind == FieldKind::number || field.kind == FieldKind::count
                            ? field.range.text(field.unit)
                            : std::string();
                    entry["required"] = field.required;
                    entry["meaning"] = std::string(field.meaning);
                    entry["words"] = words;
                    entry["columns"] = columns;
                    entry["refers_to"] = std::string(field.refers_to);
                    fields.append(entry);
                }
                all[py::str(std::string(info.name))] = fields;
            }
            return all;
        },
        "The field tables: kind of part -> list of fields with unit, range and meaning.");
}

}  // namespace heatmatch::python
