#include "heatmatch/setting/wire_run.hpp"

#include "heatmatch/base/field_access.hpp"

namespace heatmatch {

std::span<const Field> wire_run_fields() {
    static const auto fields = std::to_array<Field>({
        bind<&WireRun::name>({.name = "name",
                              .kind = FieldKind::text,
                              .required = true,
                              .meaning = "your name for this run of wire"}),
        bind<&WireRun::carries>({.name = "carries",
                                 .kind = FieldKind::choice,
                                 .required = true,
                                 .meaning = "current in the run, that of one string, the array, "
                                            "the bank, or one branch of the bank"}),
        bind<&WireRun::length_m>({.name = "length_m",
                                  .kind = FieldKind::number,
                                  .unit = unit::metre,
                                  .range = {.low = 0.0, .high = 1000.0},
                                  .required = true,
                                  .meaning = "length, one way"}),
        bind<&WireRun::wire>(
            {.name = "wire",
             .kind = FieldKind::reference,
             .required = true,
             .meaning = "id of a wire, or \"choose\" for the cheapest suitable one",
             .refers_to = "wire"}),
        bind<&WireRun::connector>({.name = "connector",
                                   .kind = FieldKind::reference,
                                   .meaning = "id of the joints at its ends",
                                   .refers_to = "connector"}),
        bind<&WireRun::joint_ohm>({.name = "joint_ohm",
                                   .kind = FieldKind::number,
                                   .unit = unit::ohm,
                                   .range = {.low = 0.0, .high = 10.0},
                                   .meaning = "total resistance of its joints"}),
        bind<&WireRun::inside>(
            {.name = "inside",
             .kind = FieldKind::flag,
             .meaning = "it lies inside a building, including a greenhouse or a shed",
             .careful = true,
             .careful_source = "nec-690-31"}),
        bind<&WireRun::owned_m>({.name = "owned_m",
                                 .kind = FieldKind::number,
                                 .unit = unit::metre,
                                 .range = {.low = 0.0, .high = 10000.0},
                                 .meaning = "named wire that you own for it, there and back; the "
                                            "rest is to buy"}),
        bind<&WireRun::owned_connectors>(
            {.name = "owned_connectors",
             .kind = FieldKind::count,
             .unit = unit::count,
             .range = {.low = 0, .high = 10000},
             .meaning = "connectors that you own for it; the others are to buy"}),
        bind<&WireRun::notes>(
            {.name = "notes", .kind = FieldKind::text, .meaning = "notes in your own words"}),
    });
    return fields;
}

}  // namespace heatmatch
