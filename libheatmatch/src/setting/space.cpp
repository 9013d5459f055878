#include "heatmatch/setting/space.hpp"

#include "heatmatch/base/field_access.hpp"

namespace heatmatch {

std::span<const Field> cover_area_fields() {
    static const auto fields = std::to_array<Field>({
        bind<&CoverArea::cover>({.name = "cover",
                                 .kind = FieldKind::reference,
                                 .required = true,
                                 .meaning = "id of a cover",
                                 .refers_to = "cover"}),
        bind<&CoverArea::area_m2>({.name = "area_m2",
                                   .kind = FieldKind::number,
                                   .unit = unit::square_metre,
                                   .range = {.low = 0.0, .high = 1e5, .low_open = true},
                                   .required = true,
                                   .meaning = "its area"}),
    });
    return fields;
}

std::span<const Field> space_fields() {
    static const auto fields = std::to_array<Field>({
        bind<&Space::volume_m3>({.name = "volume_m3",
                                 .kind = FieldKind::number,
                                 .unit = unit::cubic_metre,
                                 .range = {.low = 0.0, .high = 1e6},
                                 .meaning = "volume of air"}),
        bind<&Space::air_changes_per_h>({.name = "air_changes_per_h",
                                         .kind = FieldKind::number,
                                         .unit = unit::air_changes_per_hour,
                                         .range = {.low = 0.0, .high = 100.0},
                                         .meaning = "air changes per hour"}),
        bind<&Space::target_c>({.name = "target_c",
                                .kind = FieldKind::number,
                                .unit = unit::celsius,
                                .range = {.low = -30.0, .high = 60.0},
                                .meaning = "target temperature at night"}),
        bind<&Space::heat_capacity_kwh_k>(
            {.name = "heat_capacity_kwh_k",
             .kind = FieldKind::number,
             .unit = unit::kilowatt_hour_per_kelvin,
             .range = {.low = 0.0, .high = 1000.0},
             .meaning = "heat capacity that follows its air: floor, benches, tubs of water"}),
    });
    return fields;
}

}  // namespace heatmatch
