#include "heatmatch/setting/surroundings.hpp"

#include "heatmatch/base/field_access.hpp"

namespace heatmatch {

std::span<const Field> surroundings_fields() {
    static const auto fields = std::to_array<Field>({
        bind<&Surroundings::kind>({.name = "kind",
                                   .kind = FieldKind::choice,
                                   .required = true,
                                   .meaning = "kind of surroundings of the wire"}),
        bind<&Surroundings::air_c>(
            {.name = "air_c",
             .kind = FieldKind::number,
             .unit = unit::celsius,
             .range = {.low = -60.0, .high = 900.0},
             .meaning = "highest temperature of air or soil around the wire"}),
        bind<&Surroundings::irradiance_w_m2>({.name = "irradiance_w_m2",
                                              .kind = FieldKind::number,
                                              .unit = unit::watt_per_m2,
                                              .range = {.low = 0.0, .high = 2000.0},
                                              .meaning = "irradiance on the wire"}),
        bind<&Surroundings::wind_m_s>(
            {.name = "wind_m_s",
             .kind = FieldKind::number,
             .unit = unit::metre_per_second,
             .range = {.low = 0.0, .high = 60.0},
             .meaning = "lowest wind speed across the wire; still air if unknown"}),
        bind<&Surroundings::loaded_conductors>(
            {.name = "loaded_conductors",
             .kind = FieldKind::count,
             .unit = unit::count,
             .range = {.low = 1.0, .high = 100.0},
             .meaning = "loaded conductors bundled with it, itself included"}),
        bind<&Surroundings::metal_raceway>(
            {.name = "metal_raceway",
             .kind = FieldKind::flag,
             .meaning = "the wire lies in a metal pipe, raceway or box, whatever surrounds that",
             .careful = false,
             .careful_source = "nec-690-31"}),
        bind<&Surroundings::roof_distance_mm>(
            {.name = "roof_distance_mm",
             .kind = FieldKind::number,
             .unit = unit::millimetre,
             .range = {.low = 0.0, .high = 1e5},
             .meaning =
                 "distance from a sunlit roof up to its raceway; state a large one where there "
                 "is no roof below",
             .careful = 0.0,
             .careful_source = "nec-310"}),
    });
    return fields;
}

Surroundings Surroundings::open_air(double air_c) {
    return {.kind = SurroundingsKind::open_air, .air_c = air_c};
}

Surroundings Surroundings::sunlit(double air_c, double irradiance_w_m2) {
    return {.kind = SurroundingsKind::sunlit, .air_c = air_c, .irradiance_w_m2 = irradiance_w_m2};
}

Surroundings Surroundings::conduit(double air_c) {
    return {.kind = SurroundingsKind::conduit, .air_c = air_c};
}

}  // namespace heatmatch
