#include "heatmatch/setting/existing_circuit.hpp"

#include "sentences.hpp"

#include <array>

#include "heatmatch/base/error.hpp"
#include "heatmatch/base/field_access.hpp"
#include "heatmatch/setting/layout.hpp"

namespace heatmatch {

using setting_sentences::say;

std::span<const Field> existing_circuit_fields() {
    static const auto fields = std::to_array<Field>({
        bind<&ExistingCircuit::name>(
            {.name = "name", .kind = FieldKind::text, .meaning = "name of the circuit"}),
        bind<&ExistingCircuit::group>(
            {.name = "group", .kind = FieldKind::text, .meaning = "group of panels that feeds it"}),
        bind<&ExistingCircuit::panels>({.name = "panels",
                                        .kind = FieldKind::text,
                                        .meaning = "hook-up of the panels, as in 2S1P"}),
        bind<&ExistingCircuit::array>(
            {.name = "array",
             .kind = FieldKind::text,
             .meaning = "panels of several groups instead of one, as in barn pair x2 + shed | "
                        "porch x3"}),
        bind<&ExistingCircuit::element>({.name = "element",
                                         .kind = FieldKind::reference,
                                         .meaning = "id of the element, of equal elements",
                                         .refers_to = "element"}),
        bind<&ExistingCircuit::bank>({.name = "bank",
                                      .kind = FieldKind::text,
                                      .meaning = "hook-up of equal elements, as in 1S2P"}),
        bind<&ExistingCircuit::elements>(
            {.name = "elements",
             .kind = FieldKind::text,
             .meaning = "in place of element and bank, ids of unlike elements, joined by + in "
                        "series and | in parallel, as in [rod-a + rod-b] | rod-c"}),
        bind<&ExistingCircuit::runs>(
            {.name = "runs",
             .kind = FieldKind::texts,
             .meaning = "names of its own runs; a run that no circuit names is in each"}),
        bind<&ExistingCircuit::devices>(
            {.name = "devices",
             .kind = FieldKind::texts,
             .meaning = "ids of its own controls; one that no circuit names is in each"}),
    });
    return fields;
}

namespace {

[[noreturn]] void refuse_elements(const std::string& part, const char* field, const char* value) {
    throw InvalidInput(
        ErrorDetail{.part = part,
                    .field = field,
                    .value = value,
                    .allowed = "given, or `elements` instead of element and bank",
                    .remedy = say<"setting.write_either">(
                        with<"one">(R"({"element": "id", "bank": "1S2P"})"),
                        with<"other">(R"({"elements": "[rod-a + rod-b] | rod-c"})"))});
}

}  // namespace

void check_existing_circuit(const ExistingCircuit& circuit, const std::string& part) {
    check_record(existing_circuit_fields(), &circuit, part);
    if (circuit.elements.empty()) {
        if (circuit.element.empty()) refuse_elements(part, "element", "(missing)");
        if (circuit.bank.empty()) refuse_elements(part, "bank", "(missing)");
        return;
    }
    constexpr auto both = "given together with `elements`";
    if (!circuit.element.empty()) refuse_elements(part, "element", both);
    if (!circuit.bank.empty()) refuse_elements(part, "bank", both);
    static_cast<void>(Layout::parse(circuit.elements, part, "elements"));
}

std::vector<std::string> element_ids(const ExistingCircuit& circuit) {
    if (circuit.elements.empty()) return {circuit.element};
    return Layout::parse(circuit.elements, "circuit", "elements").names();
}

}  // namespace heatmatch
