#include <algorithm>

#include "heatmatch/base/error.hpp"
#include "heatmatch/setting/installation.hpp"

namespace heatmatch {

namespace {

/// `installation: runs[1] "hot tail"`, as in messages about a file.
std::string place_of(const char* list, std::size_t index, const std::string& name) {
    return std::string("installation: ") + list + '[' + std::to_string(index) + ']' +
           (name.empty() ? std::string() : ' ' + quote(name, 80));
}

void check_site_and_weather(const Installation& installation) {
    check_record(site_fields(), &installation.site, "installation: site");
    check_site(installation.site);
    if (!installation.weather) return;
    check_record(monthly_normals_fields(), &*installation.weather, "installation: weather");
    check_monthly_normals(*installation.weather);
    check_record_low(installation.site, *installation.weather);
}

void check_records(const Installation& installation) {
    check_site_and_weather(installation);
    for (std::size_t i = 0; i < installation.panels.size(); ++i) {
        const OwnedPanels& owned = installation.panels[i];
        check_owned_panels(owned, place_of("panels", i, owned.group));
    }
    for (std::size_t i = 0; i < installation.elements.size(); ++i) {
        const AllowedElements& allowed = installation.elements[i];
        check_allowed_elements(allowed, place_of("elements", i, allowed.element));
    }
    if (installation.store) {
        check_record(store_fields(), &*installation.store, "installation: store");
    }
    for (std::size_t i = 0; i < installation.runs.size(); ++i) {
        const WireRun& run = installation.runs[i];
        const std::string place = place_of("runs", i, run.name);
        check_record(wire_run_fields(), &run, place);
        check_record(surroundings_fields(), &run.surroundings, place + " surroundings");
    }
    for (std::size_t i = 0; i < installation.devices.size(); ++i) {
        const Device& device = installation.devices[i];
        check_record(device_fields(), &device, place_of("devices", i, device.part));
    }
    if (installation.space) {
        check_record(space_fields(), &*installation.space, "installation: space");
        const auto& covers = installation.space->covers;
        for (std::size_t i = 0; i < covers.size(); ++i) {
            check_record(cover_area_fields(), &covers[i],
                         place_of("space covers", i, covers[i].cover));
        }
    }
    check_record(goals_fields(), &installation.goals, "installation: goals");
    if (installation.circuit) {
        check_existing_circuit(*installation.circuit, "installation: circuit");
    }
    for (std::size_t i = 0; i < installation.circuits.size(); ++i) {
        const ExistingCircuit& circuit = installation.circuits[i];
        check_existing_circuit(circuit, place_of("circuits", i, circuit.name));
    }
}

void check_all(const auto& parts) {
    for (const auto& part : parts) check_part(part);
}

void check_element_in(const Parts& parts, const Element& element) {
    check_part(element);
    if (!element.alloy.empty()) check_part(find_alloy(parts, element.alloy));
    if (!element.sheath.empty()) check_part(find_sheath(parts, element.sheath));
}

void check_wire_in(const Parts& parts, const Wire& wire) {
    check_part(wire);
    if (!wire.insulation.empty()) check_part(find_insulation(parts, wire.insulation));
}

/// The parts that a circuit of the installation may contain.
void check_named_parts(const Installation& installation, const Parts& parts) {
    for (const OwnedPanels& owned : installation.panels) check_part(find_panel(parts, owned.panel));
    const bool any_element =
        std::any_of(installation.elements.begin(), installation.elements.end(),
                    [](const AllowedElements& allowed) { return allowed.any.has_value(); });
    if (any_element) {
        check_all(parts.elements);
        check_all(parts.alloys);
        check_all(parts.sheaths);
    } else {
        for (const AllowedElements& allowed : installation.elements) {
            check_element_in(parts, find_element(parts, allowed.element));
        }
    }
    for (const ExistingCircuit& circuit : existing_circuits(installation)) {
        for (const std::string& id : element_ids(circuit)) {
            check_element_in(parts, find_element(parts, id));
        }
    }
    const bool any_wire = std::any_of(installation.runs.begin(), installation.runs.end(),
                                      [](const WireRun& run) { return run.chooses(); });
    if (any_wire) {
        check_all(parts.wires);
        check_all(parts.insulations);
    }
    for (const WireRun& run : installation.runs) {
        if (!any_wire) check_wire_in(parts, find_wire(parts, run.wire));
        if (!run.connector.empty()) check_part(find_connector(parts, run.connector));
    }
    for (const Device& device : installation.devices) check_part(find_control(parts, device.part));
    if (installation.store) check_part(find_medium(parts, installation.store->medium));
    if (!installation.space) return;
    for (const CoverArea& area : installation.space->covers) {
        check_part(find_cover(parts, area.cover));
    }
}

}  // namespace

void check_installation(const Installation& installation, const Parts& parts) {
    check_records(installation);
    for_each_list(installation.parts, [](const auto& list, PartKind) { check_all(list); });
    check_references(installation, parts);
    check_named_parts(installation, parts);
}

}  // namespace heatmatch
