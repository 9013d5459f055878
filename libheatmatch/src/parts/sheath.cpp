#include "heatmatch/parts/sheath.hpp"

#include "common_fields.hpp"

namespace heatmatch {

std::span<const Field> sheath_fields() {
    static const std::vector<Field> fields = with_common_fields<Sheath>({
        bind<&Sheath::verdict_limit_c>({.name = "verdict_limit_c",
                                        .kind = FieldKind::number,
                                        .unit = unit::celsius,
                                        .range = {.low = 40.0, .high = 2000.0},
                                        .required = true,
                                        .meaning = "temperature limit for years of service"}),
        bind<&Sheath::hard_limit_c>({.name = "hard_limit_c",
                                     .kind = FieldKind::number,
                                     .unit = unit::celsius,
                                     .range = {.low = 40.0, .high = 2000.0},
                                     .required = true,
                                     .meaning = "temperature above which it soon fails"}),
        bind<&Sheath::emissivity>({.name = "emissivity",
                                   .kind = FieldKind::number,
                                   .unit = unit::none,
                                   .range = {.low = 0.01, .high = 1.0},
                                   .meaning = "emissivity of the surface in service"}),
        bind<&Sheath::bare>({.name = "bare",
                             .kind = FieldKind::flag,
                             .meaning = "the coil is uncovered: it is live metal"}),
    });
    return fields;
}

void check_sheath(const Sheath& sheath) {
    check_order("sheath \"" + sheath.id + '"', "verdict_limit_c", std::nullopt,
                sheath.verdict_limit_c, sheath.hard_limit_c);
}

}  // namespace heatmatch
