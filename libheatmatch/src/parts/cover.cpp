#include "heatmatch/parts/cover.hpp"

#include "common_fields.hpp"

namespace heatmatch {

namespace {

constexpr Range u_range{.low = 0.05, .high = 20.0};

}  // namespace

std::span<const Field> cover_fields() {
    static const std::vector<Field> fields = with_common_fields<Cover>({
        bind<&Cover::u_w_m2k>({.name = "u_w_m2k",
                               .kind = FieldKind::number,
                               .unit = unit::watt_per_m2_k,
                               .range = u_range,
                               .required = true,
                               .meaning = "heat loss per area and kelvin, typical"}),
        bind<&Cover::u_low_w_m2k>({.name = "u_low_w_m2k",
                                   .kind = FieldKind::number,
                                   .unit = unit::watt_per_m2_k,
                                   .range = u_range,
                                   .meaning = "lowest likely heat loss"}),
        bind<&Cover::u_high_w_m2k>({.name = "u_high_w_m2k",
                                    .kind = FieldKind::number,
                                    .unit = unit::watt_per_m2_k,
                                    .range = u_range,
                                    .meaning = "highest likely heat loss"}),
    });
    return fields;
}

void check_cover(const Cover& cover) {
    check_order("cover \"" + cover.id + '"', "u_w_m2k", cover.u_low_w_m2k, cover.u_w_m2k,
                cover.u_high_w_m2k);
}

}  // namespace heatmatch
