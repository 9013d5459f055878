#include "heatmatch/setting/existing_circuit.hpp"

#include <array>

#include "heatmatch/base/field_access.hpp"

namespace heatmatch {

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
                                         .required = true,
                                         .meaning = "id of the element",
                                         .refers_to = "element"}),
        bind<&ExistingCircuit::bank>({.name = "bank",
                                      .kind = FieldKind::text,
                                      .required = true,
                                      .meaning = "hook-up of equal elements, as in 1S2P"}),
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

}  // namespace heatmatch
