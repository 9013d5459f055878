#include "docs_classes_more.hpp"
#include "docs_parts_view.hpp"
#include "parts_view.hpp"

#include "heatmatch/base/error.hpp"
#include "heatmatch/catalog/catalog.hpp"

namespace heatmatch::python {

namespace {

/// Any part as the Python object of its kind.
py::object part_object(const Part& part) {
    return std::visit([](const auto& record) { return py::cast(record); }, part);
}

constexpr const char* read_as_name = "_read_as";

/// The parts of one kind as a mapping from id.
struct PartsView {
    py::object owner;  //!< the Catalog, kept alive
    PartKind kind = PartKind::panel;

    [[nodiscard]] std::shared_ptr<const Parts> snapshot() const {
        return snapshot_of(owner.cast<const Catalog&>());
    }
    /// The object of a part of that snapshot, with its origin.
    [[nodiscard]] py::object object_of(const Part& part,
                                       const std::shared_ptr<const Parts>& parts) const {
        py::object object = part_object(part);
        const std::string& path = owner.cast<const Catalog&>().path();
        if (!path.empty()) carry(object, {.path = path, .parts = parts});
        return object;
    }
    /// Result for each id and object, in order of id.
    template <class Make>
    py::list objects(Make make) const {
        py::list made;
        const auto parts = snapshot();
        for_each_list(*parts, [&](const auto& list, PartKind listed) {
            if (listed != kind) return;
            for (const auto& part : list) made.append(make(part.id, object_of(part, parts)));
        });
        return made;
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
    if (const auto found = parts->find(view.kind, id)) return view.object_of(*found, parts);
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

}  // namespace

std::shared_ptr<const Parts> snapshot_of(const Catalog& catalog) {
    const py::gil_scoped_release release;
    return catalog.snapshot();
}

void carry(const py::object& part, const ReadAs& read_as) {
    // Bypasses the rejection of assignments to a part.
    const py::str name(read_as_name);
    const py::object value = py::cast(read_as);
    if (PyObject_GenericSetAttr(part.ptr(), name.ptr(), value.ptr()) != 0) {
        throw py::error_already_set();
    }
}

void carry_on(const py::handle& from, const py::object& changed) {
    const py::object held = py::getattr(from, read_as_name, py::none());
    if (!held.is_none()) carry(changed, held.cast<const ReadAs&>());
}

std::optional<Part> read_from(const Catalog& catalog, const py::handle& object, const Part& part) {
    const py::object held = py::getattr(object, read_as_name, py::none());
    if (held.is_none()) return std::nullopt;
    const auto& read_as = held.cast<const ReadAs&>();
    if (read_as.path != catalog.path()) return std::nullopt;
    return read_as.parts->find(part_kind(part).kind, part_id(part));
}

void register_parts_view(py::module_& module) {
    py::class_<Parts> snapshot(module, "Parts", docs::class_parts);
    snapshot.def_readonly("panels", &Parts::panels, "All panels, a list.")
        .def_readonly("elements", &Parts::elements, "All elements, a list.")
        .def_readonly("wires", &Parts::wires, "All wires, a list.")
        .def_readonly("insulations", &Parts::insulations, "All insulations, a list.")
        .def_readonly("controls", &Parts::controls, "All controls, a list.")
        .def_readonly("connectors", &Parts::connectors, "All connectors, a list.")
        .def_readonly("media", &Parts::media, "All fills and liquids of stores, a list.")
        .def_readonly("alloys", &Parts::alloys, "All alloys, a list.")
        .def_readonly("sheaths", &Parts::sheaths, "All sheaths, a list.")
        .def_readonly("covers", &Parts::covers, "All covers, a list.")
        .def("__repr__",
             [](const Parts& all) {
                 return "<" + std::to_string(list_parts(all).size()) + " parts>";
             })
        .def(py::pickle(
            [](const Parts& all) {
                return py::make_tuple(catalog_to_json({.rows = list_parts(all)}));
            },
            [](const py::tuple& state) {
                Parts all;
                for (const Part& part :
                     catalog_from_json(state[0].cast<std::string>(), "pickle").rows) {
                    all.put(part);
                }
                return all;
            }));

    py::class_<ReadAs>(module, "_ReadAs");
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
        .def("keys", &PartsView::ids, docs::parts_view_keys)
        .def(
            "values",
            [](const PartsView& view) {
                return view.objects([](const auto&, const py::object& part) { return part; });
            },
            docs::parts_view_values)
        .def(
            "items",
            [](const PartsView& view) {
                return view.objects([](const std::string& id, const py::object& part) {
                    return py::make_tuple(id, part);
                });
            },
            docs::parts_view_items)
        .def(
            "get",
            [](const PartsView& view, const std::string& id, const py::object& otherwise) {
                const auto parts = view.snapshot();
                const auto found = parts->find(view.kind, id);
                return found ? view.object_of(*found, parts) : otherwise;
            },
            py::arg("id"), py::arg("default") = py::none(), py::pos_only(), docs::parts_view_get)
        .def(py::pickle(
            [](const PartsView& view) {
                return py::make_tuple(view.owner, static_cast<int>(view.kind));
            },
            [](const py::tuple& state) {
                return PartsView{state[0], static_cast<PartKind>(state[1].cast<int>())};
            }))
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

void add_parts_views(py::class_<Catalog>& cls) {
    for (const PartKindInfo& info : part_kinds()) {
        const std::string doc = "The " + std::string(info.plural) + " by id.";
        cls.def_property_readonly(
            std::string(info.plural).c_str(),
            [kind = info.kind](const py::object& self) {
                return PartsView{self, kind};
            },
            doc.c_str());
    }
}

}  // namespace heatmatch::python
