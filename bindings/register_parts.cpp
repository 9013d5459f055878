#include "docs_parts.hpp"
#include "parts_view.hpp"
#include "pybind.hpp"

#include "heatmatch/base/error.hpp"
#include "heatmatch/parts/parts.hpp"
#include "heatmatch/solar/datasheet_fit.hpp"
#include "heatmatch/text/part_json.hpp"

namespace heatmatch::python {

namespace {

std::string title_of(const PartKindInfo& info, const py::dict& arguments) {
    const py::str id("id");
    const bool named = arguments.contains(id) && py::isinstance<py::str>(arguments[id]);
    return std::string(info.name) +
           (named ? ' ' + quote(text_from(arguments[id], "id")) : std::string());
}

/// A docstring that all kinds share, with an example of this kind; in the example `{part}` is its
/// name and `{class}` its class.
std::string with_example(const PartKindInfo& info, const char* name, std::string doc,
                         std::string_view shown) {
    std::string example =
        "\n\nExamples\n--------\n>>> import heatmatch as hm\n"
        ">>> {part} = hm.Catalog.starter()." +
        std::string(info.plural) + ".values()[0]\n" + std::string(shown);
    const auto put = [&example](std::string_view place, std::string_view text) {
        for (std::size_t at = example.find(place); at != std::string::npos;
             at = example.find(place, at)) {
            example.replace(at, place.size(), text);
        }
    };
    put("{part}", info.name);
    put("{class}", name);
    return doc + example;
}

template <class P>
P make(const PartKindInfo& info, const py::dict& arguments, P start) {
    const std::string title = title_of(info, arguments);
    fill_record(info.fields, &start, arguments, title);
    check_part(Part{start});
    return start;
}

template <class P>
py::class_<P> register_part(py::module_& module, const char* name, PartKind kind, const char* doc) {
    const PartKindInfo& info = part_kind(kind);
    // Attributes only for what it was read as: assignments are refused below.
    py::class_<P> cls(module, name, with_example(info, name, doc, docs::part_class_example).c_str(),
                      py::dynamic_attr());
    cls.def(py::init([&info](const py::kwargs& arguments) { return make(info, arguments, P{}); }),
            with_example(info, name, docs::part_init, docs::part_init_example).c_str());
    add_field_properties(cls, info.fields);
    cls.def_property_readonly_static(
        "kind", [&info](const py::object&) { return std::string(info.name); },
        "Kind of part, as in a catalog file.");
    cls.def(
        "replace",
        [&info](const py::object& self, const py::kwargs& changes) {
            if (!py::isinstance<P>(self)) throw py::type_error("replace() is called on a part");
            const auto& part = self.cast<const P&>();
            py::dict arguments = changes;
            if (!arguments.contains("id")) arguments["id"] = part.id;
            py::object changed = py::cast(make(info, arguments, part));
            carry_on(self, changed);
            return changed;
        },
        with_example(info, name, docs::part_replace, docs::part_replace_example).c_str());
    cls.def("__setattr__", [](const P&, const std::string& field, const py::object&) {
        throw py::attribute_error(
            "a part is not changed in place: make a changed copy, as in "
            "part.replace(" +
            clip(field) + "=...)");
    });
    cls.def(
        "to_dict", [&info](const P& part) { return record_to_dict(info.fields, &part); },
        with_example(info, name, docs::part_to_dict, docs::part_to_dict_example).c_str());
    cls.def(
        "to_json", [](const P& part) { return part_to_json(Part{part}); },
        with_example(info, name, docs::part_to_json, docs::part_json_example).c_str());
    cls.def_static(
        "from_json",
        [kind](const GivenText& given) { return std::get<P>(part_from_json(kind, given.text)); },
        py::arg("text"), py::pos_only(),
        with_example(info, name, docs::part_from_json, docs::part_json_example).c_str());
    cls.def(py::self == py::self);
    cls.def("__repr__", [name](const P& part) {
        return std::string(name) + "(id='" + part.id + "', label='" + part.label + "')";
    });
    cls.def(py::pickle([](const P& part) { return py::make_tuple(part_to_json(Part{part}, -1)); },
                       [kind](const py::tuple& state) {
                           return std::get<P>(part_from_json(kind, state[0].cast<std::string>()));
                       }));
    return cls;
}

}  // namespace

void register_parts(py::module_& module) {
    register_part<Panel>(module, "Panel", PartKind::panel,
                         "Photovoltaic panel as on its label, at 1000 W/m2 and 25 °C.")
        .def(
            "listed_diode", [](const Panel& panel) { return listed_single_diode(panel); },
            docs::listed_diode);
    register_part<Element>(module, "Element", PartKind::element, "Resistive heating element.")
        .def_property_readonly("watt_density_w_cm2", &Element::watt_density_w_cm2,
                               "Rated power per heated surface [W/cm2]; None if power, length or "
                               "diameter is not stated.");
    register_part<Wire>(module, "Wire", PartKind::wire, "Single conductor with its insulation.")
        .def(
            "resistance_ohm_per_m",
            [](const Wire& wire, double temperature_c) {
                check_argument("temperature_c", temperature_c, unit::celsius,
                               {.low = -60.0, .high = 1500.0});
                return resistance_ohm_per_m(wire, temperature_c);
            },
            py::kw_only(), py::arg("temperature_c") = 20.0, docs::wire_resistance_ohm_per_m)
        .def_property_readonly("conductor_limit_c", &conductor_limit_c,
                               "Temperature above which the metal ages by oxidation [°C].");
    register_part<Insulation>(module, "Insulation", PartKind::insulation,
                              "Family of wire insulation.");
    register_part<Control>(module, "Control", PartKind::control,
                           "Switch, breaker, fuse, thermostat, limit, relay or meter.")
        .def(
            "breaking_current_a",
            [](const Control& control, double voltage_v, int poles) {
                check_argument("voltage_v", voltage_v, unit::volt, {.low = 0.0, .high = 1e5});
                check_argument("poles", poles, unit::count, {.low = 1.0, .high = 8.0});
                return breaking_current_a(control, voltage_v, poles);
            },
            py::kw_only(), py::arg("voltage_v"), py::arg("poles") = 1,
            docs::control_breaking_current_a);
    register_part<Connector>(module, "Connector", PartKind::connector, "Plug, crimp or joint.");
    register_part<Medium>(module, "Medium", PartKind::medium, "Fill of a heat store.");
    register_part<Alloy>(module, "Alloy", PartKind::alloy, "Metal of a heating coil.");
    register_part<Sheath>(module, "Sheath", PartKind::sheath, "Outer tube of an element.");
    register_part<Cover>(module, "Cover", PartKind::cover, "Cover of a heated space.");
}

}  // namespace heatmatch::python
