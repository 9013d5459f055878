#include "heatmatch/heat/space_balance.hpp"

#include "base/sentences.hpp"

#include <cmath>

#include "heatmatch/base/units.hpp"

namespace heatmatch {

namespace {

constexpr double usual_air_changes_per_h = 1.0;
constexpr double usual_depth_m = 0.5;  // air volume per square meter of cover

}  // namespace

double SpaceBalance::lift_k(double heat_w) const {
    return loss_w_k() > 0.0 ? heat_w / loss_w_k() : 0.0;
}

double SpaceBalance::after_c(double now_c, double outside_c, double heat_w, double hours) const {
    const double tends_c = outside_c + lift_k(heat_w);
    if (heat_capacity_wh_k <= 0.0) return tends_c;
    return tends_c + (now_c - tends_c) * std::exp(-hours * loss_w_k() / heat_capacity_wh_k);
}

SpaceBalance space_balance(const Space& space, const Parts& parts) {
    SpaceBalance balance{.target_c = space.target_c};
    double area_m2 = 0.0;
    for (const CoverArea& each : space.covers) {
        const Cover& cover = find_cover(parts, each.cover);
        balance.cover_w_k += cover.u_w_m2k * each.area_m2;
        balance.cover_low_w_k += cover.u_low_w_m2k.value_or(cover.u_w_m2k) * each.area_m2;
        balance.cover_high_w_k += cover.u_high_w_m2k.value_or(cover.u_w_m2k) * each.area_m2;
        area_m2 += each.area_m2;
    }
    const auto take = [&balance](const std::optional<double>& given, double otherwise,
                                 const char* field, const Unit& unit) {
        if (!given) {
            balance.assumed.push_back({"space", field, sentence_of(Amount{otherwise, unit, 4}),
                                       base_sentences::from_memory()});
        }
        return given.value_or(otherwise);
    };
    const double changes = take(space.air_changes_per_h, usual_air_changes_per_h,
                                "air_changes_per_h", unit::air_changes_per_hour);
    const double volume_m3 =
        take(space.volume_m3, usual_depth_m * area_m2, "volume_m3", unit::cubic_metre);
    balance.air_w_k = air_wh_m3k * changes * volume_m3;
    balance.heat_capacity_wh_k = 1000.0 * space.heat_capacity_kwh_k.value_or(0.0);
    return balance;
}

}  // namespace heatmatch
