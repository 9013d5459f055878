#include "heatmatch/setting/device.hpp"

#include "heatmatch/base/field_access.hpp"

namespace heatmatch {

std::span<const Field> device_fields() {
    static const auto fields = std::to_array<Field>({
        bind<&Device::part>({.name = "part",
                             .kind = FieldKind::reference,
                             .required = true,
                             .meaning = "id of a control",
                             .refers_to = "control"}),
        bind<&Device::run>(
            {.name = "run",
             .kind = FieldKind::text,
             .meaning = "name of the run in which it is placed; omit outside the circuit"}),
        bind<&Device::duty>({.name = "duty",
                             .kind = FieldKind::choice,
                             .required = true,
                             .meaning = "duty of the control"}),
        bind<&Device::poles_used>({.name = "poles_used",
                                   .kind = FieldKind::count,
                                   .unit = unit::count,
                                   .range = {.low = 1, .high = 8},
                                   .meaning = "number of its poles wired in series"}),
        bind<&Device::set_c>({.name = "set_c",
                              .kind = FieldKind::number,
                              .unit = unit::celsius,
                              .range = {.low = -50.0, .high = 1200.0},
                              .meaning = "set point: temperature at which a sensing device opens"}),
        bind<&Device::senses>(
            {.name = "senses",
             .kind = FieldKind::choice,
             .meaning = "place where it senses; the wall of the store if not stated",
             .careful = std::string("space"),
             .careful_source = "common-practice"}),
        bind<&Device::drives>({.name = "drives",
                               .kind = FieldKind::texts,
                               .meaning = "ids of the controls that it opens"}),
        bind<&Device::opens_on_supply_loss>(
            {.name = "opens_on_supply_loss",
             .kind = FieldKind::flag,
             .meaning = "the circuit opens when the control supply is lost",
             .careful = false,
             .careful_source = "common-practice"}),
        bind<&Device::opens_on_probe_break>(
            {.name = "opens_on_probe_break",
             .kind = FieldKind::flag,
             .meaning = "the circuit opens when the probe or its wire breaks",
             .careful = false,
             .careful_source = "common-practice"}),
        bind<&Device::set_tolerance_k>({.name = "set_tolerance_k",
                                        .kind = FieldKind::number,
                                        .unit = unit::kelvin,
                                        .range = {.low = 0.0, .high = 100.0},
                                        .meaning = "tolerance above set_c within which it opens",
                                        .careful = 10.0,
                                        .careful_source = "from-memory"}),
        bind<&Device::owned>({.name = "owned",
                              .kind = FieldKind::count,
                              .unit = unit::count,
                              .range = {.low = 0, .high = 1000},
                              .meaning = "pieces of it that you own; the others are to buy"}),
    });
    return fields;
}

}  // namespace heatmatch
