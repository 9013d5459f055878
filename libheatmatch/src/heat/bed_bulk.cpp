#include "bed_bulk.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

BedBulk bulk_of(const BedCharge& charge, const BedGeometry& geometry, double power_w) {
    const double all_w = power_w + charge.others_w();
    double form = geometry.body.form();
    if (!charge.others.empty() && all_w > 0.0) {
        // Rises add up: the resistance to the wall of each circuit counts by its power.
        form *= power_w / all_w;
        for (std::size_t i = 0; i < charge.others.size(); ++i) {
            form += geometry.other_bodies[i].form() * charge.others[i].mean_w() / all_w;
        }
    }
    const double air_k = geometry.air_k;
    BedBulk bulk{.bed_k = air_k, .edge_k = air_k};
    constexpr double hottest_bulk_k = 3500.0;
    constexpr int most_steps = 60;
    constexpr double close_enough_k = 1e-5;
    for (int step = 0; step < most_steps; ++step) {
        const double ua = charge.shell.loss_w_k(bulk.edge_k, air_k);
        const double k = charge.fill.conductivity.mean(bulk.edge_k, bulk.bed_k);
        const double ue = 1.0 / (1.0 / ua + form / k);
        const double tau =
            charge.fill.mean_capacity_j_m3k(air_k, bulk.bed_k) * charge.shell.volume_m3 / ue;
        // Heat of one day, and the remainder from the days before.
        const double before = charge.days > 1.0 ? std::expm1(-seconds_of_day * charge.days / tau) /
                                                      std::expm1(-seconds_of_day / tau)
                                                : 1.0;
        const double rise = all_w / ue * -std::expm1(-geometry.seconds / tau) * before;
        const double bed_k = std::min(air_k + rise, hottest_bulk_k);
        const double edge_k = air_k + (bed_k - air_k) * ue / ua;
        const double moved = std::fabs(bed_k - bulk.bed_k) + std::fabs(edge_k - bulk.edge_k);
        bulk = {.bed_k = bed_k, .edge_k = edge_k};
        if (moved < close_enough_k) break;
    }
    return bulk;
}

}  // namespace heatmatch
