#include "heatmatch/parts/alloy.hpp"

#include "common_fields.hpp"

namespace heatmatch {

namespace {

constexpr auto factor_columns = std::to_array<Column>(
    {{"t_c", unit::celsius, {-100.0, 3500.0}, "temperature"},
     {"factor", unit::none, {0.05, 1000.0}, "resistance over that at 20 °C"}});

}  // namespace

std::span<const Field> alloy_fields() {
    static const std::vector<Field> fields = with_common_fields<Alloy>({
        bind<&Alloy::resistance_factor>({.name = "resistance_factor",
                                         .kind = FieldKind::rows,
                                         .meaning = "resistance over that at 20 °C, by temperature",
                                         .columns = factor_columns}),
        bind<&Alloy::limit_c>({.name = "limit_c",
                               .kind = FieldKind::number,
                               .unit = unit::celsius,
                               .range = {.low = 50.0, .high = 3500.0},
                               .meaning = "highest temperature of the wire"}),
        bind<&Alloy::fixed_resistance>(
            {.name = "fixed_resistance",
             .kind = FieldKind::flag,
             .meaning = "one resistance describes it; no where resistance changes by more than "
                        "half, as in a lamp or a PTC block"}),
    });
    return fields;
}

}  // namespace heatmatch
