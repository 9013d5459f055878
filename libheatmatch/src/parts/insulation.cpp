#include "heatmatch/parts/insulation.hpp"

#include "common_fields.hpp"

namespace heatmatch {

std::span<const Field> insulation_fields() {
    static const std::vector<Field> fields = with_common_fields<Insulation>({
        bind<&Insulation::family>({.name = "family",
                                   .kind = FieldKind::text,
                                   .required = true,
                                   .meaning = "material, for example PVC or silicone rubber"}),
        bind<&Insulation::limit_c>({.name = "limit_c",
                                    .kind = FieldKind::number,
                                    .unit = unit::celsius,
                                    .range = {.low = 40.0, .high = 1200.0},
                                    .required = true,
                                    .meaning = "continuous limit of the conductor, dry"}),
        bind<&Insulation::limit_wet_c>({.name = "limit_wet_c",
                                        .kind = FieldKind::number,
                                        .unit = unit::celsius,
                                        .range = {.low = 30.0, .high = 1200.0},
                                        .meaning = "continuous limit in wet places",
                                        .careful = 60.0,
                                        .careful_source = "nec-310-4"}),
        bind<&Insulation::conductivity_w_mk>({.name = "conductivity_w_mk",
                                              .kind = FieldKind::number,
                                              .unit = unit::watt_per_m_k,
                                              .range = {.low = 0.01, .high = 50.0},
                                              .meaning = "thermal conductivity"}),
        bind<&Insulation::standard>({.name = "standard",
                                     .kind = FieldKind::text,
                                     .meaning = "standard or type letters that give the limit"}),
    });
    return fields;
}

}  // namespace heatmatch
