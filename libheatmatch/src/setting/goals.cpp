#include "heatmatch/setting/goals.hpp"

#include "heatmatch/base/field_access.hpp"

namespace heatmatch {

std::span<const Field> goals_fields() {
    static const auto fields = std::to_array<Field>({
        bind<&Goals::months>({.name = "months",
                              .kind = FieldKind::numbers,
                              .unit = unit::count,
                              .range = {.low = 1, .high = 12},
                              .meaning = "months of the heating season"}),
        bind<&Goals::budget>({.name = "budget",
                              .kind = FieldKind::number,
                              .unit = unit::money,
                              .range = {.low = 0.0, .high = 1e7},
                              .meaning = "for parts to buy"}),
        bind<&Goals::currency>({.name = "currency",
                                .kind = FieldKind::text,
                                .meaning = "three-letter code of ISO 4217"}),
        bind<&Goals::per_usd>(
            {.name = "per_usd",
             .kind = FieldKind::number,
             .range = {.low = 1e-4, .high = 1e6},
             .meaning = "price of one US dollar in `currency`; converts prices that are in USD"}),
        bind<&Goals::circuits_max>({.name = "circuits_max",
                                    .kind = FieldKind::count,
                                    .unit = unit::count,
                                    .range = {.low = 1, .high = 6},
                                    .meaning = "circuits of a plan, at most; else three"}),
        bind<&Goals::volts_max>(
            {.name = "volts_max",
             .kind = FieldKind::number,
             .unit = unit::volt,
             .range = {.low = 1.0, .high = 2000.0},
             .meaning = "of an array at the record low, at most; arrays above it are left out"}),
        bind<&Goals::headroom_min>({.name = "headroom_min",
                                    .kind = FieldKind::number,
                                    .range = {.low = 0.0, .high = 0.9},
                                    .meaning = "smallest headroom of a plan's checks"}),
        bind<&Goals::parts_max>({.name = "parts_max",
                                 .kind = FieldKind::count,
                                 .unit = unit::count,
                                 .range = {.low = 1, .high = 1000},
                                 .meaning = "pieces on a plan's bill, wire not counted"}),
    });
    return fields;
}

}  // namespace heatmatch
