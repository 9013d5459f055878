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

/// Work on a catalog that waits for other threads: Python runs on meanwhile.
template <class Work>
auto without_lock(Work work) {
    const py::gil_scoped_release release;
    return work();
}

/// An import. If Ctrl-C was pressed meanwhile, the interruption reports that the rows are imported.
template <class Work>
ImportReport imported(Work work) {
    ImportReport report = without_lock(work);
    if (PyErr_CheckSignals() == 0) return report;
    if (PyErr_ExceptionMatches(PyExc_KeyboardInterrupt) != 0) {
        PyErr_Clear();
        const std::string number = std::to_string(report.entry);
        PyErr_SetString(
            PyExc_KeyboardInterrupt,
            (report.entry == 0 ? std::string("the import had nothing to change")
                               : "the import was done already and is kept whole, as entry " +
                                     number + " of the history; undo " + number + " reverses it")
                .c_str());
    }
    throw py::error_already_set();
}

/// The object now represents the part in the catalog.
void carry_as_written(const py::object& object, const Catalog& catalog, const Part& part) {
    Parts written;
    written.put(part);
    carry(object, {.path = catalog.path(), .parts = std::make_shared<const Parts>(written)});
}

/// Values to set. Texts with numbers remain texts, because `-120 mV/K` depends on other fields.
std::map<std::string, Value> values_from(const PartKindInfo& info, const std::string& id,
                                         const py::kwargs& changes) {
    const std::string title = std::string(info.name) + ' ' + quote(id, 80);
    std::map<std::string, Value> values;
    for (const auto& [key, object] : changes) {
        const auto name = text_from(key, "field", title);
        const Field* field = find_field(info.fields, name);
        if (field == nullptr) refuse_unknown_field(info.fields, name, title);
        const bool is_number = field->kind == FieldKind::number || field->kind == FieldKind::count;
        values[name] = is_number && py::isinstance<py::str>(object)
                           ? Value{text_from(object, name.c_str(), title)}
                           : from_python(*field, object, title);
    }
    return values;
}

void register_changes(py::class_<Catalog>& cls) {
    cls.def(
           "add",
           [](Catalog& catalog, const py::object& object) {
               const Part part = part_from(object);
               without_lock([&] { catalog.add(part); });
               carry_as_written(object, catalog, part);
           },
           py::arg("part"), py::pos_only(), "Adds a part; CatalogError if its id is taken.")
        .def(
            "replace",
            [](Catalog& catalog, const py::object& object) {
                const Part part = part_from(object);
                const auto read_as = read_from(catalog, object, part);
                without_lock([&] { catalog.replace(part, read_as); });
                carry_as_written(object, catalog, part);
            },
            py::arg("part"), py::pos_only(),
            "Replaces the part of that id; CatalogError if that undoes a change made "
            "elsewhere since the part was read.")
        .def(
            "edit",
            [](Catalog& catalog, const std::string& kind, const std::string& id,
               const py::kwargs& changes) {
                const PartKindInfo& info = part_kind(kind);
                const auto values = values_from(info, id, changes);
                const Part part = without_lock([&] { return catalog.edit(info.kind, id, values); });
                py::object object =
                    std::visit([](const auto& record) { return py::cast(record); }, part);
                carry_as_written(object, catalog, part);
                return object;
            },
            "Sets fields of the part as it is in the file at that moment, and returns it; None "
            "makes "
            "a field unknown. Changes of other fields made elsewhere are kept.")
        .def(
            "remove",
            [](Catalog& catalog, const std::string& kind, const std::string& id) {
                without_lock([&] { catalog.remove(part_kind(kind).kind, id); });
            },
            py::arg("kind"), py::arg("id"), py::pos_only(),
            "Removes a part; rejected while other parts refer to it.")
        .def(
            "undo",
            [](Catalog& catalog, std::optional<int> number) {
                return without_lock([&] { return catalog.undo(number); });
            },
            py::arg("number") = py::none(), py::pos_only(),
            "Undoes the change of that number, or the newest, as a new entry; no change is "
            "undone twice.");
}

void register_imports(py::class_<Catalog>& cls) {
    cls.def(
           "import_json",
           [](Catalog& catalog, const py::object& path, bool keep_good) {
               const std::string name = path_from(path);
               return imported([&] { return catalog.import_json(name, keep_good); });
           },
           py::arg("path"), py::pos_only(), py::kw_only(), py::arg("keep_good") = false,
           "Puts the rows of a JSON file in; all or nothing unless keep_good.")
        .def(
            "import_json_text",
            [](Catalog& catalog, const GivenText& given, bool keep_good) {
                return imported(
                    [&] { return catalog.import_json_text(given.text, "JSON", keep_good); });
            },
            py::arg("text"), py::pos_only(), py::kw_only(), py::arg("keep_good") = false,
            "The same from JSON text.")
        .def(
            "import_csv_text",
            [](Catalog& catalog, const std::string& kind, const GivenText& given,
               const std::string& origin, bool keep_good, bool number_records) {
                return imported([&] {
                    return catalog.import_csv_text(part_kind(kind).kind, given.text, origin,
                                                   keep_good, number_records);
                });
            },
            py::arg("kind"), py::arg("text"), py::pos_only(), py::kw_only(),
            py::arg("origin") = "CSV", py::arg("keep_good") = false,
            py::arg("number_records") = false,
            "Puts rows of one kind in from CSV text whose header names fields.")
        .def(
            "import_module_csv",
            [](Catalog& catalog, const py::object& path, bool keep_good) {
                const std::string name = path_from(path);
                return imported([&] { return catalog.import_module_csv(name, keep_good); });
            },
            py::arg("path"), py::pos_only(), py::kw_only(), py::arg("keep_good") = false,
            "Puts panels in from the public module-rating list.");
}

}  // namespace

void register_catalog(py::module_& module) {
    register_catalog_reports(module);
    py::class_<Catalog> cls(module, "Catalog",
                            "The starter catalog, with a file of the user's own over it.");
    using Unlocked = py::call_guard<py::gil_scoped_release>;
    cls.def_static("starter", &Catalog::starter, "The starter catalog; read-only.")
        .def_static(
            "open",
            [](const py::object& path, int wait_ms) {
                const std::string name = path_from(path);
                return without_lock([&] { return Catalog::open(name, wait_ms); });
            },
            py::arg("path"), py::pos_only(), py::kw_only(), py::arg("wait_ms") = 2000,
            "Opens the user's file over the starter; created if absent.")
        .def_property_readonly("path", &Catalog::path, "of the file; empty for the starter")
        .def(
            "is_own",
            [](const Catalog& catalog, const std::string& kind, const std::string& id) {
                return without_lock([&] { return catalog.is_own(part_kind(kind).kind, id); });
            },
            py::arg("kind"), py::arg("id"), py::pos_only(),
            "Whether a part is the user's own, not the starter's.")
        .def("parts", &Catalog::parts, Unlocked(), "A snapshot of all parts, by value.")
        .def("close", &Catalog::close, Unlocked(),
             "Closes the file; every later use is a CatalogError.")
        .def("__enter__", [](const py::object& self) { return self; })
        .def("__exit__",
             [](Catalog& catalog, const py::args&) { without_lock([&] { catalog.close(); }); })
        .def("history", &Catalog::history, Unlocked(), "All changes of the file, oldest first.")
        .def(
            "save_copy",
            [](const Catalog& catalog, const py::object& path) {
                const std::string name = path_from(path);
                without_lock([&] { catalog.save_copy(name); });
            },
            py::arg("path"), py::pos_only(), "Writes a consistent copy of the file.")
        .def(
            "export_json",
            [](const Catalog& catalog, const py::object& path, bool force) {
                const std::string name = path_from(path);
                without_lock([&] { catalog.export_json(name, force); });
            },
            py::arg("path"), py::pos_only(), py::kw_only(), py::arg("force") = false,
            "Writes the user's own rows and removals as JSON; over a file that exists with force "
            "only, over a catalog never.")
        .def("export_json_text", &Catalog::export_json_text, Unlocked(), "The same as text.")
        .def("export_all_json_text", &Catalog::export_all_json_text, Unlocked(),
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
    register_changes(cls);
    register_imports(cls);
    add_parts_views(cls);
    module.def(
        "sources_json", [] { return std::string(sources_json()); },
        "The bibliography of the starter catalog as JSON text.");
    module.def(
        "library_version", [] { return std::string(library_version()); },
        "Version of the library.");
}

}  // namespace heatmatch::python
