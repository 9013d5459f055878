#include "sentences.hpp"

#include <algorithm>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/suggestion.hpp"
#include "heatmatch/setting/installation.hpp"
#include "heatmatch/setting/layout.hpp"

namespace heatmatch {

using setting_sentences::say;

namespace {

using OwnThings = std::vector<std::string> ExistingCircuit::*;

bool names(const ExistingCircuit& circuit, OwnThings things, const std::string& name) {
    const auto& own = circuit.*things;
    return std::find(own.begin(), own.end(), name) != own.end();
}

/// Whether a run or device belongs to a circuit.
bool belongs(const std::vector<ExistingCircuit>& circuits, std::size_t index, OwnThings things,
             const std::string& name) {
    if (names(circuits[index], things, name)) return true;
    return std::none_of(circuits.begin(), circuits.end(), [&](const ExistingCircuit& circuit) {
        return names(circuit, things, name);
    });
}

[[noreturn]] void refuse(const std::string& part, const char* field, const std::string& value,
                         const std::string& allowed, Sentence remedy) {
    throw InvalidInput(ErrorDetail{.part = part,
                                   .field = field,
                                   .value = value,
                                   .allowed = allowed,
                                   .remedy = std::move(remedy)});
}

void check_own(const ExistingCircuit& circuit, const char* field, OwnThings things,
               const std::vector<std::string_view>& known) {
    for (const std::string& name : circuit.*things) {
        if (std::find(known.begin(), known.end(), name) != known.end()) continue;
        refuse("circuit \"" + circuit.name + '"', field, quote(name), "listed in the installation",
               suggestion(name, known));
    }
}

/// An array of one group in equal strings is stated by its group and hook-up.
void simplify_array(ExistingCircuit& circuit) {
    if (circuit.array.empty()) return;
    const std::string part = "circuit \"" + circuit.name + '"';
    const auto strings = plain_strings(Layout::parse(circuit.array, part, "array"), part, "array");
    const std::vector<std::string>& first = strings.front();
    const bool equal = std::all_of(strings.begin(), strings.end(), [&first](const auto& string) {
        return string == first && std::all_of(string.begin(), string.end(),
                                              [&](const auto& it) { return it == first.front(); });
    });
    if (!equal) return;
    circuit.group = first.front();
    circuit.panels = std::to_string(first.size()) + 'S' + std::to_string(strings.size()) + 'P';
    circuit.array.clear();
}

void check_array(const ExistingCircuit& circuit) {
    const std::string part = "circuit \"" + circuit.name + '"';
    const bool of_group = !circuit.group.empty() || !circuit.panels.empty();
    if (!circuit.array.empty() && of_group) {
        refuse(part, "array", quote(circuit.array), "not given beside group and panels",
               say<"setting.array_or_group">());
    }
    if (!circuit.array.empty()) return;
    for (const auto& [field, text] :
         {std::pair{"group", &circuit.group}, std::pair{"panels", &circuit.panels}}) {
        if (text->empty()) {
            refuse(part, field, "(missing)", "given", say<"setting.array_or_group">());
        }
    }
}

std::vector<ExistingCircuit> named_circuits(const Installation& installation) {
    std::vector<ExistingCircuit> circuits = installation.circuits;
    if (circuits.empty() && installation.circuit) circuits.push_back(*installation.circuit);
    for (std::size_t i = 0; i < circuits.size(); ++i) {
        if (circuits[i].name.empty()) circuits[i].name = "circuit " + std::to_string(i + 1);
    }
    return circuits;
}

}  // namespace

std::vector<ExistingCircuit> existing_circuits(const Installation& installation) {
    std::vector<ExistingCircuit> circuits = named_circuits(installation);
    for (ExistingCircuit& circuit : circuits) simplify_array(circuit);
    return circuits;
}

std::vector<std::string> groups_of(const ExistingCircuit& circuit) {
    if (circuit.array.empty()) return {circuit.group};
    const std::string part = "circuit \"" + circuit.name + '"';
    std::vector<std::string> groups;
    for (const auto& string :
         plain_strings(Layout::parse(circuit.array, part, "array"), part, "array")) {
        groups.insert(groups.end(), string.begin(), string.end());
    }
    return groups;
}

Installation installation_of(const Installation& installation, std::size_t circuit) {
    const std::vector<ExistingCircuit> circuits = existing_circuits(installation);
    if (circuit >= circuits.size()) {
        refuse("installation", "circuits", std::to_string(circuit),
               "0 to " + std::to_string(circuits.size()), say<"setting.describe_circuit">());
    }
    Installation seen = installation;
    seen.circuits.clear();
    seen.circuit = circuits[circuit];
    std::erase_if(seen.runs, [&](const WireRun& run) {
        return !belongs(circuits, circuit, &ExistingCircuit::runs, run.name);
    });
    std::erase_if(seen.devices, [&](const Device& device) {
        return !belongs(circuits, circuit, &ExistingCircuit::devices, device.part);
    });
    return seen;
}

void check_circuits(const Installation& installation) {
    if (installation.circuit && !installation.circuits.empty()) {
        refuse("installation", "circuit", "stated beside circuits", "one of the two",
               say<"setting.one_list">());
    }
    for (const ExistingCircuit& circuit : named_circuits(installation)) check_array(circuit);
    const std::vector<ExistingCircuit> circuits = existing_circuits(installation);
    std::vector<std::string_view> runs;
    for (const WireRun& run : installation.runs) runs.push_back(run.name);
    std::vector<std::string_view> devices;
    for (const Device& device : installation.devices) devices.push_back(device.part);
    for (std::size_t i = 0; i < circuits.size(); ++i) {
        const ExistingCircuit& circuit = circuits[i];
        for (std::size_t k = 0; k < i; ++k) {
            if (circuits[k].name != circuit.name) continue;
            refuse("installation", "circuits.name", quote(circuit.name),
                   "given to one circuit only", say<"setting.rename_circuit">());
        }
        check_own(circuit, "runs", &ExistingCircuit::runs, runs);
        check_own(circuit, "devices", &ExistingCircuit::devices, devices);
    }
}

}  // namespace heatmatch
