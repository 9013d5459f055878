#include "sentences.hpp"

#include "heatmatch/base/error.hpp"
#include "heatmatch/match/circuit/circuit.hpp"

namespace heatmatch {

namespace {

template <class P>
void check_if_known(const std::optional<P>& part) {
    if (part) check_part(*part);
}

void check_group(const OwnedPanels& owned, const PanelInService& panel) {
    check_owned_panels(owned, "panels " + quote(owned.group, 80));
    check_part(panel.given);
}

}  // namespace

void check_circuit(const Circuit& circuit, const Site& site) {
    check_record(site_fields(), &site, "site");
    check_site(site);
    if (circuit.unlike) {
        for (const GroupInArray& group : circuit.unlike->groups) {
            check_group(group.owned, group.panel);
        }
    } else {
        check_group(circuit.owned, circuit.panel);
    }
    for (const Bank& kind : circuit.bank.kinds()) {
        check_part(kind.element);
        check_if_known(kind.alloy);
        check_if_known(kind.sheath);
    }
    for (const RunParts& parts : circuit.runs) {
        const std::string place = "run " + quote(parts.run.name, 80);
        check_record(wire_run_fields(), &parts.run, place);
        check_record(surroundings_fields(), &parts.run.surroundings, place + " surroundings");
        check_if_known(parts.wire);
        check_if_known(parts.insulation);
        check_if_known(parts.connector);
    }
    for (const PlacedDevice& placed : circuit.devices) {
        check_record(device_fields(), &placed.device, "device " + quote(placed.device.part, 80));
        check_part(placed.control);
    }
    if (!circuit.heat || !circuit.heat->store) return;
    check_record(store_fields(), &circuit.heat->store->store, "store");
    check_part(circuit.heat->store->medium);
}

void check_equal_panels(const Circuit& circuit, const char* field) {
    if (!circuit.unlike) return;
    throw InvalidInput(ErrorDetail{.part = "circuit " + quote(circuit.name),
                                   .field = field,
                                   .value = quote(circuit.array_title()),
                                   .allowed = "an array of one group",
                                   .remedy = circuit_sentences::say<"circuit.read_groups">()});
}

}  // namespace heatmatch
