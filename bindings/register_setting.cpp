#include "docs_setting.hpp"
#include "pybind.hpp"
#include "state.hpp"

#include "heatmatch/base/error.hpp"
#include "heatmatch/catalog/catalog.hpp"
#include "heatmatch/setting/installation.hpp"
#include "heatmatch/text/installation_json.hpp"
#include "heatmatch/text/starter.hpp"
#include "heatmatch/text/text_file.hpp"

namespace heatmatch::python {

namespace {

/// Properties, comparison and repr of a record; its pickle is its own.
template <class Record>
py::class_<Record> register_record(py::module_& module, const char* name,
                                   std::span<const Field> fields, const char* doc,
                                   const char* example) {
    const std::string shown =
        std::string("\n\nExamples\n--------\n>>> import heatmatch as hm\n") + example;
    py::class_<Record> cls(module, name, (doc + shown).c_str());
    add_field_properties(cls, fields);
    cls.def(
        "to_dict", [fields](const Record& record) { return record_to_dict(fields, &record); },
        (docs::record_to_dict + shown).c_str());
    cls.def(py::self == py::self);
    cls.def("__repr__", [name, fields](const Record& record) {
        return std::string(name) + '(' +
               py::repr(record_to_dict(fields, &record)).template cast<std::string>() + ')';
    });
    return cls;
}

Surroundings checked(const Surroundings& surroundings) {
    check_record(surroundings_fields(), &surroundings, "surroundings");
    return surroundings;
}

/// JSON text of plain data; NumPy's numbers count as numbers.
std::string dumps(const py::object& object) {
    const auto plain = py::cpp_function([](const py::object& other) -> py::object {
        if (py::hasattr(other, "tolist")) return other.attr("tolist")();
        throw InvalidInput(
            ErrorDetail{.part = "installation",
                        .field = "value",
                        .value = shown(other),
                        .allowed = "plain data: dict, list, number, text",
                        .remedy = verbatim(py::hasattr(other, "to_dict")
                                               ? "write .to_dict() after the object"
                                               : "convert it first, as in list(...) or str(...)")});
    });
    try {
        return text_from(py::module_::import("json").attr("dumps")(
                             object, py::arg("ensure_ascii") = false, py::arg("default") = plain),
                         "installation");
    } catch (const py::error_already_set& error) {
        // Recursive data, or numbers with more digits than Python writes.
        if (!error.matches(PyExc_RecursionError) && !error.matches(PyExc_ValueError)) throw;
        if (error.matches(py::module_::import("heatmatch.errors").attr("Error"))) throw;
        throw InvalidInput(
            ErrorDetail{.part = "installation",
                        .field = "value",
                        .value = quote(py::str(error.value()).cast<std::string>(), 100),
                        .allowed = "plain data, at most 32 levels deep",
                        .remedy = verbatim("use only values that a JSON file can contain")});
    }
}

}  // namespace

void register_setting(py::module_& module) {
    register_record<Surroundings>(module, "Surroundings", surroundings_fields(),
                                  "Surroundings of one run of wire.", docs::surroundings_example)
        .def(py::init([](const py::kwargs& arguments) {
                 Surroundings surroundings;
                 fill_record(surroundings_fields(), &surroundings, arguments, "surroundings");
                 return surroundings;
             }),
             docs::record_init)
        .def_static(
            "open_air", [](double air_c) { return checked(Surroundings::open_air(air_c)); },
            py::arg("air_c"), docs::open_air)
        .def_static(
            "sunlit",
            [](double air_c, double irradiance_w_m2) {
                return checked(Surroundings::sunlit(air_c, irradiance_w_m2));
            },
            py::arg("air_c"), py::kw_only(), py::arg("irradiance_w_m2") = 1000.0, docs::sunlit)
        .def_static(
            "conduit", [](double air_c) { return checked(Surroundings::conduit(air_c)); },
            py::arg("air_c"), docs::conduit)
        .def(py::pickle(
            [](const Surroundings& record) {
                return py::make_tuple(record_to_dict(surroundings_fields(), &record));
            },
            [](const py::tuple& state) {
                Surroundings record;
                fill_record(surroundings_fields(), &record, state[0].cast<py::dict>(),
                            "surroundings");
                return record;
            }));
    register_record<Site>(module, "Site", site_fields(), "Place and mounting of the panels.",
                          docs::site_example)
        .def(py::init([](const py::kwargs& arguments) {
                 Site site;
                 fill_record(site_fields(), &site, arguments, "site");
                 check_site(site);
                 return site;
             }),
             docs::record_init)
        .def(py::pickle(
            [](const Site& record) {
                return py::make_tuple(record_to_dict(site_fields(), &record));
            },
            [](const py::tuple& state) {
                Site record;
                fill_record(site_fields(), &record, state[0].cast<py::dict>(), "site");
                return record;
            }));
    register_record<Store>(module, "Store", store_fields(), "The heat store.", docs::store_example)
        .def(py::init([](const py::kwargs& arguments) {
                 Store store;
                 fill_record(store_fields(), &store, arguments, "store");
                 return store;
             }),
             docs::record_init)
        .def(py::pickle(
            [](const Store& record) {
                return py::make_tuple(record_to_dict(store_fields(), &record));
            },
            [](const py::tuple& state) { return store_from(state[0]); }));
    register_record<WireRun>(module, "WireRun", wire_run_fields(), "One run of wire.",
                             docs::wire_run_example)
        .def_readonly("surroundings", &WireRun::surroundings, "Surroundings of the run.")
        .def(py::pickle([](const WireRun& run) { return state_of(run); }, &wire_run_from));
    register_record<Device>(module, "Device", device_fields(), "A control in its place.",
                            docs::device_example)
        .def(py::pickle([](const Device& device) { return state_of(device); }, &device_from));
    register_record<OwnedPanels>(module, "OwnedPanels", owned_panels_fields(),
                                 "Panels of one kind that the user owns.",
                                 docs::owned_panels_example)
        .def_property_readonly(
            "measured",
            [](const OwnedPanels& owned) -> py::object {
                if (!owned.measured) return py::none();
                return record_to_dict(panel_measurement_fields(), &*owned.measured);
            },
            "Meter readings with their irradiance [W/m2] and cell temperature [°C]; None if not "
            "measured.")
        .def(py::pickle([](const OwnedPanels& owned) { return state_of(owned); },
                        &owned_panels_from));

    py::class_<Installation>(module, "Installation",
                             "The user's situation: owned parts, parts that may be bought, where "
                             "they are. Read it from JSON, or from a dict of the same shape.")
        .def_static(
            "from_json",
            [](const py::object& path) {
                const std::string name = path_from(path);
                return installation_from_json(read_text_file(name), name);
            },
            py::arg("path"), py::pos_only(), "Reads an installation file.")
        .def_static(
            "from_json_text",
            [](const GivenText& given) { return installation_from_json(given.text); },
            py::arg("text"), py::pos_only(), "Reads an installation from JSON text.")
        .def_static(
            "from_dict", [](const py::dict& dict) { return installation_from_json(dumps(dict)); },
            py::arg("dict"), py::pos_only(), "Reads an installation from a dict.")
        .def(
            "to_json_text",
            [](const Installation& installation) { return installation_to_json(installation); },
            "The installation as JSON text.")
        .def(
            "to_json",
            [](const Installation& installation, const py::object& path, bool force) {
                write_text_file(path_from(path), installation_to_json(installation),
                                {.only_kind = force ? "" : "\"heatmatch_installation\""});
            },
            py::arg("path"), py::pos_only(), py::kw_only(), py::arg("force") = false,
            "Writes an installation file; over a file of another kind with force only, over a "
            "catalog never.")
        .def(
            "to_dict",
            [](const Installation& installation) {
                return py::module_::import("json")
                    .attr("loads")(installation_to_json(installation))
                    .cast<py::dict>();
            },
            "The installation as a dict, to change and read again.")
        .def_readonly("name", &Installation::name, "the user's name for it")
        .def_readonly("notes", &Installation::notes, "the user's notes")
        .def_readonly("site", &Installation::site, "location and mounting of the panels")
        .def_readonly("store", &Installation::store, "the heat store, or None")
        .def_readonly("panels", &Installation::panels, "groups of owned panels")
        .def_readonly("runs", &Installation::runs, "stretches of wire")
        .def_readonly("devices", &Installation::devices, "controls in their places")
        .def(
            "__eq__",
            [](const Installation& a, const Installation& b) {
                return installation_to_json(a) == installation_to_json(b);
            },
            py::is_operator())
        .def("__repr__",
             [](const Installation& installation) {
                 return "Installation('" + installation.name + "', " +
                        std::to_string(installation.panels.size()) + " groups of panels)";
             })
        .def(py::pickle(
            [](const Installation& installation) {
                return py::make_tuple(installation_to_json(installation));
            },
            [](const py::tuple& state) {
                return installation_from_json(state[0].cast<std::string>());
            }));
    module.def(
        "demo", [] { return installation_from_json(demo_installation_json(), "demo"); },
        docs::demo);
}

}  // namespace heatmatch::python
