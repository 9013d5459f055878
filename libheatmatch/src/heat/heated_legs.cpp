#include "heatmatch/heat/heated_legs.hpp"

#include <algorithm>
#include <cmath>

#include "heatmatch/base/constants.hpp"

namespace heatmatch {

namespace {

constexpr std::size_t most_pairs = 16;  // pairs of legs between which the wall is evaluated

}  // namespace

double joint_wall_concentration(std::span<const HeatedLegs> banks, const StoreShell& shell) {
    // A leg at the wall has no finite concentration: this is the nearest distance evaluated.
    constexpr double nearest_share = 0.95;
    const double r = shell.radius_m;
    std::vector<LegLayout::Leg> legs;
    std::vector<double> weights;
    double all = 0.0;
    double ends = 0.0;  // concentration of short legs, by power
    const double all_m2 = shell.side_m2 + shell.top_m2 + shell.bottom_m2;
    for (const HeatedLegs& bank : banks) {
        if (bank.legs.legs.empty() || bank.power_w <= 0.0) continue;
        const double each = bank.power_w / static_cast<double>(bank.legs.legs.size());
        legs.insert(legs.end(), bank.legs.legs.begin(), bank.legs.legs.end());
        weights.resize(legs.size(), each);
        const double l = bank.legs.leg_length_m;
        const double mid_plane_m2 = 2.0 * pi * r * l * std::sqrt(1.0 + 4.0 * r * r / (l * l));
        all += bank.power_w;
        ends += bank.power_w * std::max(1.0, all_m2 / mid_plane_m2);
    }
    if (legs.empty()) return 1.0;
    // Between two legs the wall may be hotter than beside either.
    std::vector<LegLayout::Leg> spots = legs;
    if (legs.size() <= most_pairs) {
        for (std::size_t i = 0; i < legs.size(); ++i) {
            for (std::size_t j = i + 1; j < legs.size(); ++j) {
                spots.push_back(
                    {.x_m = legs[i].x_m + legs[j].x_m, .y_m = legs[i].y_m + legs[j].y_m});
            }
        }
    }
    double around = 1.0;
    for (const LegLayout::Leg& spot : spots) {
        const double distance = std::hypot(spot.x_m, spot.y_m);
        if (distance <= 1e-9) continue;
        double sum = 0.0;
        for (std::size_t i = 0; i < legs.size(); ++i) {
            const LegLayout::Leg& leg = legs[i];
            const double from_axis_m = std::hypot(leg.x_m, leg.y_m);
            const double b = std::min(from_axis_m, nearest_share * r);
            const double cosine =
                b > 0.0 ? (leg.x_m * spot.x_m + leg.y_m * spot.y_m) / (from_axis_m * distance)
                        : 0.0;
            sum += weights[i] * (r * r - b * b) / (r * r - 2.0 * r * b * cosine + b * b);
        }
        around = std::max(around, sum / all);
    }
    return around * ends / all;
}

}  // namespace heatmatch
