#include "heatmatch/setting/store.hpp"

#include "heatmatch/base/field_access.hpp"

namespace heatmatch {

namespace {

constexpr Range size{.low = 0.02, .high = 20.0};
constexpr Range u_value{.low = 0.01, .high = 100.0};

Field length(std::string_view name, std::string_view meaning) {
    return {.name = name,
            .kind = FieldKind::number,
            .unit = unit::metre,
            .range = size,
            .meaning = meaning};
}

Field u_field(std::string_view name, std::string_view meaning) {
    return {.name = name,
            .kind = FieldKind::number,
            .unit = unit::watt_per_m2_k,
            .range = u_value,
            .meaning = meaning};
}

}  // namespace

std::span<const Field> store_fields() {
    static const auto fields = std::to_array<Field>({
        bind<&Store::medium>({.name = "medium",
                              .kind = FieldKind::reference,
                              .required = true,
                              .meaning = "id of the fill",
                              .refers_to = "medium"}),
        bind<&Store::shape>({.name = "shape",
                             .kind = FieldKind::choice,
                             .required = true,
                             .meaning = "shape of the fill, cylinder or box"}),
        bind<&Store::diameter_m>(length("diameter_m", "inner diameter of a cylinder")),
        bind<&Store::width_m>(length("width_m", "inner width of a box")),
        bind<&Store::depth_m>(length("depth_m", "inner depth of a box")),
        bind<&Store::height_m>(length("height_m", "height of the fill")),
        bind<&Store::wall_emissivity>(
            {.name = "wall_emissivity",
             .kind = FieldKind::number,
             .unit = unit::none,
             .range = {.low = 0.01, .high = 1.0},
             .meaning = "emissivity of the outer wall: bright metal 0.3, paint 0.9"}),
        bind<&Store::top_u_w_m2k>(u_field("top_u_w_m2k", "heat loss of the lid")),
        bind<&Store::side_u_w_m2k>(u_field("side_u_w_m2k", "heat loss of a lagged wall")),
        bind<&Store::bottom_u_w_m2k>(u_field("bottom_u_w_m2k", "heat loss of the floor")),
        bind<&Store::element_spacing_mm>({.name = "element_spacing_mm",
                                          .kind = FieldKind::number,
                                          .unit = unit::millimetre,
                                          .range = {.low = 1.0, .high = 5000.0},
                                          .meaning = "distance between neighboring elements"}),
        bind<&Store::spreader_diameter_mm>({.name = "spreader_diameter_mm",
                                            .kind = FieldKind::number,
                                            .unit = unit::millimetre,
                                            .range = {.low = 3.0, .high = 300.0},
                                            .meaning = "diameter of a metal pipe over each leg"}),
        bind<&Store::element_height_mm>(
            {.name = "element_height_mm",
             .kind = FieldKind::number,
             .unit = unit::millimetre,
             .range = {.low = 1.0, .high = 20000.0},
             .meaning =
                 "height of the lower ends of the legs, or of horizontal legs, above the floor"}),
        bind<&Store::from_axis_mm>(
            {.name = "from_axis_mm",
             .kind = FieldKind::number,
             .unit = unit::millimetre,
             .range = {.low = 0.0, .high = 10000.0},
             .meaning = "distance from the middle of the store to the middle of the legs"}),
        bind<&Store::element_lies>({.name = "element_lies",
                                    .kind = FieldKind::flag,
                                    .meaning = "the legs are horizontal; otherwise vertical"}),
        bind<&Store::stands_on>({.name = "stands_on",
                                 .kind = FieldKind::choice,
                                 .meaning = "support under the store",
                                 .careful = std::string("wood"),
                                 .careful_source = "babrauskas-2007"}),
        bind<&Store::stands>(
            {.name = "stands",
             .kind = FieldKind::choice,
             .meaning = "place of the store, inside the heated space or outside it"}),
        bind<&Store::charge_hours>({.name = "charge_hours",
                                    .kind = FieldKind::number,
                                    .unit = unit::hour,
                                    .range = {.low = 0.1, .high = 24.0},
                                    .meaning = "hours of full-sun charging per day",
                                    .careful = 10.0,
                                    .careful_source = "from-memory"}),
        bind<&Store::air_c>(
            {.name = "air_c",
             .kind = FieldKind::number,
             .unit = unit::celsius,
             .range = {.low = -60.0, .high = 80.0},
             .meaning = "air temperature around the store on the warmest day of use",
             .careful = 45.0,
             .careful_source = "from-memory"}),
        bind<&Store::terminals>({.name = "terminals",
                                 .kind = FieldKind::choice,
                                 .meaning = "place of the elements' terminals"}),
        bind<&Store::moist>({.name = "moist",
                             .kind = FieldKind::flag,
                             .meaning = "the fill was put in damp, or gets wet",
                             .careful = true,
                             .careful_source = "common-practice"}),
        bind<&Store::rods_packed>(
            {.name = "rods_packed",
             .kind = FieldKind::flag,
             .meaning =
                 "the gaps around the rods in a solid are packed full with fine sand or mortar",
             .careful = false,
             .careful_source = "common-practice"}),
        bind<&Store::vented>({.name = "vented",
                              .kind = FieldKind::flag,
                              .meaning = "the vessel has a vent for steam and pressure",
                              .careful = false,
                              .careful_source = "common-practice"}),
        bind<&Store::combustible_distance_mm>(
            {.name = "combustible_distance_mm",
             .kind = FieldKind::number,
             .unit = unit::millimetre,
             .range = {.low = 0.0, .high = 5000.0},
             .meaning = "distance from the store to the nearest wood, board or plastic",
             .careful = 0.0,
             .careful_source = "babrauskas-2007"}),
        bind<&Store::vessel>(
            {.name = "vessel",
             .kind = FieldKind::choice,
             .meaning = "material of the vessel, the weakest of wall, floor and lid"}),
        bind<&Store::vessel_mm>({.name = "vessel_mm",
                                 .kind = FieldKind::number,
                                 .unit = unit::millimetre,
                                 .range = {.low = 0.05, .high = 100.0},
                                 .meaning = "thickness of a metal vessel, which spreads heat"}),
        bind<&Store::liner>({.name = "liner",
                             .kind = FieldKind::choice,
                             .meaning = "material between fill and vessel, or none"}),
        bind<&Store::lagging>({.name = "lagging",
                               .kind = FieldKind::choice,
                               .meaning = "material of the insulation jacket, or none",
                               .careful = std::string("mineral wool"),
                               .careful_source = "common-practice"}),
        bind<&Store::lagging_mm>(
            {.name = "lagging_mm",
             .kind = FieldKind::number,
             .unit = unit::millimetre,
             .range = {.low = 0.0, .high = 1000.0},
             .meaning = "thickness of the insulation jacket where the element ends pass through",
             .careful = 100.0,
             .careful_source = "from-memory"}),
        bind<&Store::element_covered>({.name = "element_covered",
                                       .kind = FieldKind::flag,
                                       .meaning = "the liquid always covers the element",
                                       .careful = false,
                                       .careful_source = "common-practice"}),
        bind<&Store::vessel_bonded>({.name = "vessel_bonded",
                                     .kind = FieldKind::flag,
                                     .meaning = "a metal vessel is bonded to earth",
                                     .careful = false,
                                     .careful_source = "nec-690-43"}),
        bind<&Store::sheath_bonded>({.name = "sheath_bonded",
                                     .kind = FieldKind::flag,
                                     .meaning = "the sheaths of the elements are bonded to earth",
                                     .careful = false,
                                     .careful_source = "nec-690-43"}),
        bind<&Store::loss_factor>({.name = "loss_factor",
                                   .kind = FieldKind::number,
                                   .unit = unit::none,
                                   .range = {.low = 0.05, .high = 20.0},
                                   .meaning = "measured heat loss over computed heat loss"}),
        bind<&Store::notes>(
            {.name = "notes", .kind = FieldKind::text, .meaning = "notes in your own words"}),
    });
    return fields;
}

}  // namespace heatmatch
