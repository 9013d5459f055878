#include "heatmatch/parts/medium.hpp"

#include "common_fields.hpp"

namespace heatmatch {

namespace {

constexpr Range conductivity{.low = 0.01, .high = 500.0};
constexpr Column temperature_column{"t_c", unit::celsius, {-100.0, 2000.0}, "temperature"};
constexpr auto heat_capacity_columns = std::to_array<Column>(
    {temperature_column,
     {"heat_capacity_j_kgk", unit::joule_per_kg_k, {50.0, 10000.0}, "heat capacity"}});
constexpr auto conductivity_columns = std::to_array<Column>(
    {temperature_column, {"conductivity_w_mk", unit::watt_per_m_k, {0.01, 500.0}, "conductivity"}});

}  // namespace

std::span<const Field> medium_fields() {
    static const std::vector<Field> fields = with_common_fields<Medium>({
        bind<&Medium::form>({.name = "form",
                             .kind = FieldKind::choice,
                             .required = true,
                             .meaning = "form of the fill"}),
        bind<&Medium::porosity>({.name = "porosity",
                                 .kind = FieldKind::number,
                                 .unit = unit::none,
                                 .range = {.low = 0.0, .high = 0.95},
                                 .meaning = "share of voids in a bed"}),
        bind<&Medium::grain_mm>({.name = "grain_mm",
                                 .kind = FieldKind::number,
                                 .unit = unit::millimetre,
                                 .range = {.low = 0.001, .high = 500.0},
                                 .meaning = "size of the grains"}),
        bind<&Medium::stone_mm>(
            {.name = "stone_mm",
             .kind = FieldKind::number,
             .unit = unit::millimetre,
             .range = {.low = 0.001, .high = 500.0},
             .meaning =
                 "size of coarse stones, where grain_mm is smaller for the conductivity model"}),
        bind<&Medium::k20_w_mk>({.name = "k20_w_mk",
                                 .kind = FieldKind::number,
                                 .unit = unit::watt_per_m_k,
                                 .range = conductivity,
                                 .required = true,
                                 .meaning = "conductivity at 20 °C, dry, typical"}),
        bind<&Medium::k20_low_w_mk>({.name = "k20_low_w_mk",
                                     .kind = FieldKind::number,
                                     .unit = unit::watt_per_m_k,
                                     .range = conductivity,
                                     .meaning = "lowest likely conductivity at 20 °C, dry"}),
        bind<&Medium::k20_high_w_mk>({.name = "k20_high_w_mk",
                                      .kind = FieldKind::number,
                                      .unit = unit::watt_per_m_k,
                                      .range = conductivity,
                                      .meaning = "highest likely conductivity at 20 °C, dry"}),
        bind<&Medium::density_kg_m3>({.name = "density_kg_m3",
                                      .kind = FieldKind::number,
                                      .unit = unit::kilogram_per_m3,
                                      .range = {.low = 50.0, .high = 20000.0},
                                      .required = true,
                                      .meaning = "bulk density, dry"}),
        bind<&Medium::heat_capacity_j_kgk>({.name = "heat_capacity_j_kgk",
                                            .kind = FieldKind::rows,
                                            .required = true,
                                            .meaning = "heat capacity over temperature",
                                            .columns = heat_capacity_columns}),
        bind<&Medium::conductivity_w_mk>(
            {.name = "conductivity_w_mk",
             .kind = FieldKind::rows,
             .meaning = "measured conductivity over temperature, instead of the model",
             .columns = conductivity_columns}),
        bind<&Medium::moist_k_w_mk>({.name = "moist_k_w_mk",
                                     .kind = FieldKind::number,
                                     .unit = unit::watt_per_m_k,
                                     .range = conductivity,
                                     .meaning = "conductivity while moist, typical"}),
        bind<&Medium::moist_k_low_w_mk>({.name = "moist_k_low_w_mk",
                                         .kind = FieldKind::number,
                                         .unit = unit::watt_per_m_k,
                                         .range = conductivity,
                                         .meaning = "lowest likely conductivity while moist"}),
        bind<&Medium::moist_k_high_w_mk>({.name = "moist_k_high_w_mk",
                                          .kind = FieldKind::number,
                                          .unit = unit::watt_per_m_k,
                                          .range = conductivity,
                                          .meaning = "highest likely conductivity while moist"}),
        bind<&Medium::ceiling_c>({.name = "ceiling_c",
                                  .kind = FieldKind::number,
                                  .unit = unit::celsius,
                                  .range = {.low = 20.0, .high = 2000.0},
                                  .meaning = "upper temperature limit of the fill"}),
    });
    return fields;
}

void check_medium(const Medium& medium) {
    const std::string title = "medium \"" + medium.id + '"';
    check_order(title, "k20_w_mk", medium.k20_low_w_mk, medium.k20_w_mk, medium.k20_high_w_mk);
    if (medium.moist_k_w_mk) {
        check_order(title, "moist_k_w_mk", medium.moist_k_low_w_mk, *medium.moist_k_w_mk,
                    medium.moist_k_high_w_mk);
    }
}

}  // namespace heatmatch
