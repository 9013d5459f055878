#include "bed_ends.hpp"

#include <algorithm>
#include <cmath>

namespace heatmatch {

namespace {

constexpr double room_k = 293.15;

}  // namespace

double BedEnds::hottest_c(double BedTemperatures::*place) const {
    const double ends_c = std::max({low.*place, typical.*place, high.*place});
    constexpr double same = 1e-3;
    if (ln_typical < same || ln_high - ln_typical < same) return ends_c;
    const double first = (typical.*place - low.*place) / ln_typical;
    const double second = (high.*place - typical.*place) / (ln_high - ln_typical);
    const double curvature = (second - first) / ln_high;
    if (!(curvature < 0.0)) return ends_c;
    // T = T_low + (x - 0) first + x (x - ln_typical) curvature, x = ln(k/k_low)
    const double peak = 0.5 * (ln_typical - first / curvature);
    if (!(peak > 0.0 && peak < ln_high)) return ends_c;
    return std::max(ends_c, low.*place + peak * (first + (peak - ln_typical) * curvature));
}

BedEnds bed_ends(const BankHeat& heat, const BedTemperatures& low, const BedTemperatures& typical,
                 const BedTemperatures& high) {
    const auto ln_k = [&](const BedCharge& charge) {
        return std::log(charge.fill.conductivity.at(room_k));
    };
    const double ln_low = ln_k(heat.careful);
    return {low, typical, high, ln_k(heat.likely) - ln_low, ln_k(heat.conducting) - ln_low};
}

}  // namespace heatmatch
