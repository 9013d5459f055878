#include "heatmatch/heat/heat_day.hpp"

#include <algorithm>
#include <cstddef>
#include <numeric>
#include <utility>

namespace heatmatch {

namespace {

bool is_covered(const HeatMoment& moment, const HeatMoment& by) {
    if (moment.own > by.own) return false;
    for (std::size_t i = 0; i < moment.others.size(); ++i) {
        if (moment.others[i] > by.others[i]) return false;
    }
    return true;
}

}  // namespace

double HeatDay::full_hours() const {
    return std::accumulate(share.begin(), share.end(), 0.0);
}

double share_of_hours(std::span<const HeatDay> days, double hours) {
    if (days.empty()) return 1.0;
    double most = 0.0;
    for (const HeatDay& day : days) most = std::max(most, day.full_hours());
    return std::min(1.0, most / hours);
}

std::vector<HeatMoment> worst_moments(std::vector<HeatMoment> moments) {
    std::vector<HeatMoment> kept;
    for (HeatMoment& moment : moments) {
        const auto covers = [&moment](const HeatMoment& other) {
            return is_covered(moment, other);
        };
        if (std::any_of(kept.begin(), kept.end(), covers)) continue;
        kept.erase(std::remove_if(
                       kept.begin(), kept.end(),
                       [&moment](const HeatMoment& other) { return is_covered(other, moment); }),
                   kept.end());
        kept.push_back(std::move(moment));
    }
    return kept;
}

}  // namespace heatmatch
