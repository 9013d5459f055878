#include "heatmatch/setting/installation.hpp"

#include "base/sentences.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <set>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/field_access.hpp"
#include "heatmatch/base/suggestion.hpp"

namespace heatmatch {

using setting_sentences::say;

namespace {

/// Prices in US dollars in the currency of the goals.
void convert_prices(Parts& parts, const Goals& goals) {
    if (!goals.per_usd || goals.currency.empty() || goals.currency == "USD") return;
    const auto convert = [&](auto& list) {
        for (auto& part : list) {
            Price& price = part.price;
            if (price.currency != "USD") continue;
            if (price.low) price.low = *price.low * *goals.per_usd;
            if (price.high) price.high = *price.high * *goals.per_usd;
            price.currency = goals.currency;
        }
    };
    convert(parts.panels);
    convert(parts.elements);
    convert(parts.wires);
    convert(parts.insulations);
    convert(parts.controls);
    convert(parts.connectors);
    convert(parts.media);
    convert(parts.alloys);
    convert(parts.sheaths);
    convert(parts.covers);
}

}  // namespace

Parts merged_parts(Parts catalog, const Installation& installation) {
    for (const Part& part : list_parts(installation.parts)) catalog.put(part);
    convert_prices(catalog, installation.goals);
    return catalog;
}

const OwnedPanels& find_group(const Installation& installation, std::string_view group) {
    std::vector<std::string_view> known;
    for (const OwnedPanels& owned : installation.panels) {
        if (owned.group == group) return owned;
        known.push_back(owned.group);
    }
    const std::string wrong = quote(group);
    const Sentence remedy = known.empty() ? say<"setting.no_panels">() : suggestion(group, known);
    throw NotFound("no group of panels " + wrong + " in the installation; " + remedy.text(),
                   ErrorDetail{.part = "installation", .field = "group", .value = wrong});
}

namespace {

void check_drives(const Device& device, const std::vector<Device>& devices) {
    std::vector<std::string_view> known;
    known.reserve(devices.size());
    for (const Device& other : devices) known.push_back(other.part);
    for (const std::string& driven : device.drives) {
        if (std::find(known.begin(), known.end(), driven) != known.end()) continue;
        throw InvalidInput(ErrorDetail{.part = "device \"" + device.part + '"',
                                       .field = "drives",
                                       .value = quote(driven),
                                       .allowed = "the part of a device of the installation",
                                       .remedy = suggestion(driven, known)});
    }
}

}  // namespace

void check_references(const Installation& installation, const Parts& parts) {
    std::set<std::string_view> groups;
    for (const OwnedPanels& owned : installation.panels) {
        static_cast<void>(find_panel(parts, owned.panel));
        if (!groups.insert(owned.group).second) {
            throw InvalidInput(ErrorDetail{.part = "installation",
                                           .field = "panels.group",
                                           .value = '"' + owned.group + '"',
                                           .allowed = "given to one group only",
                                           .remedy = base_sentences::say<"base.rename_one">()});
        }
    }
    for (const AllowedElements& allowed : installation.elements) {
        if (!allowed.any) static_cast<void>(find_element(parts, allowed.element));
    }
    std::vector<std::string_view> runs;
    for (const WireRun& run : installation.runs) {
        if (std::find(runs.begin(), runs.end(), run.name) != runs.end()) {
            throw InvalidInput(ErrorDetail{.part = "installation",
                                           .field = "runs.name",
                                           .value = quote(run.name),
                                           .allowed = "given to one run only",
                                           .remedy = base_sentences::say<"base.rename_one">()});
        }
        runs.push_back(run.name);
        if (!run.chooses()) static_cast<void>(find_wire(parts, run.wire));
        if (!run.connector.empty()) static_cast<void>(find_connector(parts, run.connector));
    }
    for (const Device& device : installation.devices) {
        static_cast<void>(find_control(parts, device.part));
        check_drives(device, installation.devices);
        if (device.run.empty() || std::find(runs.begin(), runs.end(), device.run) != runs.end()) {
            continue;
        }
        throw InvalidInput(ErrorDetail{
            .part = "device \"" + device.part + '"',
            .field = "run",
            .value = '"' + device.run + '"',
            .allowed = "the name of a run of the installation",
            .remedy = runs.empty() ? say<"setting.describe_run">() : suggestion(device.run, runs)});
    }
    if (installation.store) static_cast<void>(find_medium(parts, installation.store->medium));
    if (installation.space) {
        for (const CoverArea& area : installation.space->covers) {
            static_cast<void>(find_cover(parts, area.cover));
        }
    }
    check_circuits(installation);
    for (const ExistingCircuit& circuit : existing_circuits(installation)) {
        for (const std::string& group : groups_of(circuit)) {
            static_cast<void>(find_group(installation, group));
        }
        for (const std::string& id : element_ids(circuit)) {
            static_cast<void>(find_element(parts, id));
        }
    }
}

}  // namespace heatmatch
