#include "docs_classes.hpp"
#include "docs_classes_more.hpp"
#include "pybind.hpp"
#include "state.hpp"

#include "heatmatch/match/circuit/circuit.hpp"
#include "heatmatch/match/circuit/unlike_bank.hpp"

namespace heatmatch::python {

namespace {

/// A fact of equal panels. Throws InvalidInput for an array of several groups.
template <class Fact>
Fact of_equal(const Circuit& circuit, const char* field, Fact fact) {
    check_equal_panels(circuit, field);
    return fact;
}

std::vector<OwnedPanels> groups_of_circuit(const Circuit& circuit) {
    if (!circuit.unlike) return {circuit.owned};
    std::vector<OwnedPanels> groups;
    for (const GroupInArray& group : circuit.unlike->groups) groups.push_back(group.owned);
    return groups;
}

std::vector<std::vector<std::string>> strings_of_circuit(const Circuit& circuit) {
    if (!circuit.unlike) {
        const std::vector<std::string> one(static_cast<std::size_t>(circuit.panels.series),
                                           circuit.owned.group);
        return {static_cast<std::size_t>(circuit.panels.parallel), one};
    }
    std::vector<std::vector<std::string>> strings;
    for (const auto& string : circuit.unlike->strings) {
        std::vector<std::string>& names = strings.emplace_back();
        for (const std::size_t group : string) {
            names.push_back(circuit.unlike->groups[group].owned.group);
        }
    }
    return strings;
}

/// Every element of the bank alone, equal ones repeated.
std::vector<Bank> alone_of(const Bank& bank) {
    if (bank.unlike) return bank.unlike->elements;
    return {static_cast<std::size_t>(bank.count()), bank};
}

std::vector<Element> elements_of(const Circuit& circuit) {
    std::vector<Element> elements;
    for (const Bank& one : alone_of(circuit.bank)) elements.push_back(one.element);
    return elements;
}

std::vector<ElementResistance> resistances_of(const Circuit& circuit) {
    std::vector<ElementResistance> found;
    for (const Bank& one : alone_of(circuit.bank)) found.push_back(one.each);
    return found;
}

std::string elements_text(const Circuit& circuit) {
    const Bank& bank = circuit.bank;
    if (bank.unlike) return bank.label();
    const Layout::Series string{{.name = bank.element.id, .count = bank.hookup.series}};
    const auto strings = static_cast<std::size_t>(bank.hookup.parallel);
    return Layout{.strings = std::vector<Layout::Series>(strings, string)}.text();
}

}  // namespace

void register_circuit(py::module_& module) {
    py::class_<RunParts>(module, "RunParts", docs::class_run_parts)
        .def_property_readonly(
            "name", [](const RunParts& parts) { return parts.run.name; }, "Name of the run.")
        .def_readonly("run", &RunParts::run, "Run of wire as stated.")
        .def_readonly("wire", &RunParts::wire, "Wire of the run; None if no wire is known.")
        .def_readonly("insulation", &RunParts::insulation,
                      "Insulation of the wire; None if no wire is known.")
        .def_readonly("connector", &RunParts::connector,
                      "Connector at the ends of the run; None if not known.")
        .def_readonly("conductor_c", &RunParts::conductor_c,
                      "Conductor temperature at which `loop_ohm` holds [°C].")
        .def_property_readonly("loop_ohm", &RunParts::loop_ohm,
                               "Resistance of both conductors, joints included [ohm].")
        .def("__repr__",
             [](const RunParts& parts) {
                 return "<run \"" + parts.run.name +
                        "\": " + (parts.wire ? parts.wire->id : std::string("no wire")) + ">";
             })
        .def(py::pickle([](const RunParts& parts) { return state_of(parts); }, &run_parts_from));
    py::class_<PlacedDevice>(module, "PlacedDevice", docs::class_placed_device)
        .def_readonly("device", &PlacedDevice::device, "Place and duty of the control.")
        .def_readonly("control", &PlacedDevice::control, "Control, as in the catalog.")
        .def("__repr__",
             [](const PlacedDevice& placed) {
                 return "<device " + placed.control.id + ": " + text_of_choice(placed.device.duty) +
                        ">";
             })
        .def(py::pickle([](const PlacedDevice& placed) { return state_of(placed); },
                        &placed_device_from));
    py::class_<Circuit>(module, "Circuit", "One array feeding one bank.")
        .def_property_readonly(
            "owned",
            [](const Circuit& circuit) { return of_equal(circuit, "owned", circuit.owned); },
            "The group of panels; InvalidInput for several groups.")
        .def_property_readonly(
            "equal_panels", [](const Circuit& circuit) { return circuit.unlike == nullptr; },
            "Whether all panels are of one group, in equal strings.")
        .def_property_readonly("groups", &groups_of_circuit,
                               "Groups of panels of the array, each once.")
        .def_property_readonly("strings", &strings_of_circuit,
                               "Group of every panel, string by string.")
        .def_property_readonly("array_layout", &Circuit::array_title,
                               "Array as text: group and hook-up, or the notation of several "
                               "groups.")
        .def_property_readonly(
            "panel",
            [](const Circuit& circuit) { return of_equal(circuit, "panel", circuit.panel.given); },
            "The panel as in the catalog; InvalidInput for several groups.")
        .def_property_readonly(
            "panel_filled",
            [](const Circuit& circuit) {
                return of_equal(circuit, "panel_filled", circuit.panel.panel);
            },
            "The panel with class defaults filled in; InvalidInput for several groups.")
        .def_property_readonly(
            "diode_new",
            [](const Circuit& circuit) {
                return of_equal(circuit, "diode_new", circuit.panel.as_new);
            },
            "Single diode fitted to the label; InvalidInput for several groups.")
        .def_property_readonly(
            "diode_today",
            [](const Circuit& circuit) {
                return of_equal(circuit, "diode_today", circuit.panel.today);
            },
            "Single diode as aged or measured; InvalidInput for several groups.")
        .def_property_readonly(
            "remarks",
            [](const Circuit& circuit) {
                Sentences all;
                for (const PanelInService* panel : circuit.kinds_of_panels()) {
                    all.insert(all.end(), panel->remarks.begin(), panel->remarks.end());
                }
                return all;
            },
            "remarks on the measured values")
        .def_property_readonly(
            "panels",
            [](const Circuit& circuit) {
                return of_equal(circuit, "panels", circuit.panels.label());
            },
            "Hook-up of the panels, as in 2S1P; InvalidInput for several groups.")
        .def_property_readonly(
            "series", [](const Circuit& circuit) { return circuit.panels.series; },
            "Number of panels in series, in the longest string.")
        .def_property_readonly(
            "parallel", [](const Circuit& circuit) { return circuit.panels.parallel; },
            "Number of strings in parallel.")
        .def_property_readonly(
            "element",
            [](const Circuit& circuit) {
                return circuit.bank.unlike ? std::nullopt : std::optional(circuit.bank.element);
            },
            "the element; None for a bank of unlike elements")
        .def_property_readonly("elements", &elements_of,
                               "each element of the bank, in the order of elements_text")
        .def_property_readonly("elements_text", &elements_text,
                               "ids of the elements, + for series and | for parallel")
        .def_property_readonly("element_resistances", &resistances_of,
                               "resistance of each element, hot [ohm]")
        .def_property_readonly(
            "alloy", [](const Circuit& circuit) { return circuit.bank.alloy; },
            "alloy of the coil, or None")
        .def_property_readonly(
            "sheath", [](const Circuit& circuit) { return circuit.bank.sheath; },
            "sheath of the element, or None")
        .def_property_readonly(
            "heat",
            [](const Circuit& circuit) { return std::const_pointer_cast<BankHeat>(circuit.heat); },
            "heat of the bank in its store; None without a store")
        .def_property_readonly(
            "bank", [](const Circuit& circuit) { return circuit.bank.label(); },
            "hook-up of equal elements, as in 1S2P; else elements_text")
        .def_property_readonly(
            "element_count", [](const Circuit& circuit) { return circuit.bank.count(); },
            "elements in the bank")
        .def_property_readonly(
            "elements_owned", [](const Circuit& circuit) { return circuit.bank.owned; },
            "elements of the bank that are owned")
        .def_property_readonly(
            "element_resistance",
            [](const Circuit& circuit) {
                return circuit.bank.unlike ? std::nullopt : std::optional(circuit.bank.each);
            },
            "resistance of one element, hot [ohm]; None for unlike elements")
        .def_property_readonly(
            "bank_ohm", [](const Circuit& circuit) { return circuit.bank.typical_ohm(); },
            "typical resistance of the bank, hot [ohm]")
        .def_property_readonly(
            "bank_low_ohm", [](const Circuit& circuit) { return circuit.bank.low_ohm(); },
            "low end of the resistance of the bank, hot [ohm]")
        .def_property_readonly(
            "bank_high_ohm", [](const Circuit& circuit) { return circuit.bank.high_ohm(); },
            "high end of the resistance of the bank, hot [ohm]")
        .def_property_readonly("wire_ohm", &Circuit::wire_ohm, "resistance of all runs [ohm]")
        .def_property_readonly(
            "stc_match_ohm", &Circuit::label_match_ohm,
            "Vmp / Imp of the array by its label; of several groups as they are today [ohm]")
        .def_property_readonly("cold_voltage_v", &Circuit::cold_voltage_v,
                               "open-circuit voltage at the record low [V]")
        .def_property_readonly("short_circuit_current_a", &Circuit::short_circuit_current_a,
                               "short-circuit current in full sun, panels as new [A]")
        .def_property_readonly(
            "array",
            [](const Circuit& circuit) {
                return circuit.unlike ? py::cast(circuit.unlike->array(PanelState::today))
                                      : py::cast(Array{circuit.panel.today, circuit.panels.series,
                                                       circuit.panels.parallel});
            },
            "The array as it is today: an `Array` of equal panels, or a `MixedArray`.")
        .def_readonly("runs", &Circuit::runs, "stretches of wire")
        .def_readonly("devices", &Circuit::devices, "controls in their places")
        .def_readonly("name", &Circuit::name, "name of an existing circuit")
        .def_property_readonly("title", &Circuit::title, "panels and elements in one line")
        .def("__repr__", [](const Circuit& circuit) { return "<Circuit " + circuit.title() + ">"; })
        .def(py::pickle([](const Circuit& circuit) { return state_of(circuit); }, &circuit_from));
    py::class_<Delivered>(module, "Delivered", docs::class_delivered)
        .def_readonly("irradiance_w_m2", &Delivered::irradiance_w_m2,
                      "Irradiance on the cells [W/m2].")
        .def_readonly("cell_temperature_c", &Delivered::cell_temperature_c,
                      "Cell temperature [°C].")
        .def_readonly("power_low_w", &Delivered::power_low_w,
                      "Low end of the power into the bank [W].")
        .def_readonly("power_w", &Delivered::power_w, "Typical power into the bank [W].")
        .def_readonly("power_high_w", &Delivered::power_high_w,
                      "High end of the power into the bank [W].")
        .def_readonly("voltage_v", &Delivered::voltage_v, "Voltage at the bank [V].")
        .def_readonly("current_a", &Delivered::current_a, "Current of the bank [A].")
        .def_readonly("wire_w", &Delivered::wire_w, "Power lost in wire and joints [W].")
        .def_readonly("maximum_power_w", &Delivered::maximum_power_w,
                      "Maximum power of the array [W].")
        .def_property_readonly(
            "harvest_fraction", &Delivered::harvest_fraction,
            "Power into the bank over the array's maximum power, 0 to 1 [dimensionless].")
        .def("__repr__",
             [](const Delivered& at) {
                 return "<" + format_number(at.power_w, 4) + " W at " +
                        format_number(at.irradiance_w_m2) + " W/m2, " +
                        format_number(at.cell_temperature_c) + " °C cells>";
             })
        .def(py::pickle([](const Delivered& delivered) { return state_of(delivered); },
                        &delivered_from));
}

}  // namespace heatmatch::python
