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
    });
    return fields;
}

}  // namespace heatmatch
