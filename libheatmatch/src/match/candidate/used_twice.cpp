#include "used_twice.hpp"

#include "sentences.hpp"

#include <map>
#include <string>
#include <string_view>

#include "heatmatch/base/error.hpp"
#include "heatmatch/match/circuit/bank_tree.hpp"
#include "heatmatch/match/circuit/hookup.hpp"

namespace heatmatch {

using candidate_sentences::say;

namespace {

struct Used {
    int count = 0;
    std::string by{};  //!< names of the circuits
};

using UsedThings = std::map<std::string, Used, std::less<>>;

void use(UsedThings& used, const std::string& name, int count, const std::string& circuit) {
    Used& at = used[name];
    at.count += count;
    at.by += (at.by.empty() ? "" : ", ") + quote(circuit);
}

/// How many of each element a circuit has.
std::map<std::string, int> elements_of(const ExistingCircuit& circuit, const std::string& part) {
    if (circuit.elements.empty()) {
        return {{circuit.element, parse_hookup(circuit.bank, part, "bank").count()}};
    }
    std::map<std::string, int> counts;
    for (const std::string& id : BankTree::parse(circuit.elements, part, "elements").elements) {
        ++counts[id];
    }
    return counts;
}

void refuse_more(const UsedThings& used, const char* field, const std::string& name, int most) {
    const auto found = used.find(name);
    if (found == used.end() || found->second.count <= most) return;
    throw InvalidInput(ErrorDetail{
        .part = "installation",
        .field = field,
        .value = say<"assess.used_by">(with<"count">(found->second.count, unit::none, 9),
                                       with<"name">(name), with<"circuits">(found->second.by))
                     .text(),
        .allowed = "at most " + std::to_string(most),
        .remedy = say<"assess.use_fewer">()});
}

}  // namespace

void check_used_twice(const Installation& installation,
                      const std::vector<ExistingCircuit>& circuits) {
    if (circuits.size() < 2) return;
    UsedThings panels;
    UsedThings elements;
    for (const ExistingCircuit& circuit : circuits) {
        const std::string part = "circuit " + quote(circuit.name);
        const int each =
            circuit.array.empty() ? parse_hookup(circuit.panels, part, "panels").count() : 1;
        std::map<std::string, int> in_circuit;
        for (const std::string& group : groups_of(circuit)) in_circuit[group] += each;
        for (const auto& [group, count] : in_circuit) use(panels, group, count, circuit.name);
        for (const auto& [element, count] : elements_of(circuit, part)) {
            use(elements, element, count, circuit.name);
        }
    }
    for (const OwnedPanels& owned : installation.panels) {
        refuse_more(panels, "circuits.panels", owned.group, owned.count);
    }
    // Where others may be bought, any number may be there.
    std::map<std::string, int> listed;
    for (const AllowedElements& allowed : installation.elements) {
        if (allowed.any) return;
        listed[allowed.element] += allowed.count;
    }
    for (const auto& [element, count] : listed) {
        refuse_more(elements, "circuits.bank", element, count);
    }
}

}  // namespace heatmatch
