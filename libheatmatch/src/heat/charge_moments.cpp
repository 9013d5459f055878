#include "charge_moments.hpp"

#include "bed_geometry.hpp"
#include "line_spread.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <utility>

#include "heatmatch/base/units.hpp"

namespace heatmatch {

namespace {

constexpr std::size_t day_hours = 24;
using Hours = std::array<double, day_hours>;

/// Diffusivities of the fill while it is nearly cold, and near a hot sheath [m2/s].
std::array<double, 2> diffusivities(const BedCharge& charge) {
    constexpr double warm_k = 50.0;
    constexpr double hot_k = 600.0;
    const double air_k = charge.air_c + zero_celsius_k;
    const auto at = [&](double rise_k) {
        return charge.fill.conductivity.mean(air_k, air_k + rise_k) /
               charge.fill.mean_capacity_j_m3k(air_k, air_k + rise_k);
    };
    return {at(warm_k), at(hot_k)};
}

/// Local heat at the end of each hour of a day, as a share of that after the hours of a charge at
/// the largest power.
Hours local_heat(const HeatDay& day, const LineSpread& spread, double diffusivity,
                 double charge_s) {
    std::array<double, day_hours + 1> after{};
    for (std::size_t hour = 1; hour < after.size(); ++hour) {
        after[hour] = spread.at(diffusivity * 3600.0 * static_cast<double>(hour));
    }
    const double whole = spread.at(diffusivity * charge_s);
    constexpr double not_reached = 1e-9;
    Hours heat{};
    for (std::size_t hour = 0; hour < heat.size(); ++hour) {
        double sum = 0.0;
        for (std::size_t k = 0; k <= hour; ++k) {
            sum += day.share[k] * (after[hour + 1 - k] - after[hour - k]);
        }
        heat[hour] = whole > not_reached ? sum / whole : 1.0;
    }
    return heat;
}

void keep_larger(Hours& most, const Hours& more) {
    for (std::size_t hour = 0; hour < most.size(); ++hour) {
        most[hour] = std::max(most[hour], more[hour]);
    }
}

/// The most of any leg of the judged bank, seen with either diffusivity.
template <class SpreadOf>
Hours most_of_legs(const BedCharge& charge, const BedGeometry& geometry, const HeatDay& day,
                   bool of_largest, const SpreadOf& spread_of) {
    Hours most{};
    for (const LegDistances& from : geometry.distances) {
        const LineSpread spread = spread_of(from);
        for (const double diffusivity : diffusivities(charge)) {
            Hours heat = local_heat(day, spread, diffusivity, geometry.seconds);
            const double largest = *std::max_element(heat.begin(), heat.end());
            if (of_largest && largest > 0.0) {
                for (double& share : heat) share /= largest;
            }
            keep_larger(most, heat);
        }
    }
    return most;
}

Hours own_heat(const BedCharge& charge, const BedGeometry& geometry, const HeatDay& day) {
    const LegBody& body = geometry.body;
    return most_of_legs(charge, geometry, day, true, [&](const LegDistances& from) {
        return LineSpread(
            {.length_m = body.length_m, .surface_m = geometry.surface_m, .mean_m = body.mean_m},
            from.own_m);
    });
}

Hours heat_of_other(const BedCharge& charge, const BedGeometry& geometry, std::size_t other,
                    const HeatDay& day) {
    const LegBody& body = geometry.other_bodies[other];
    return most_of_legs(charge, geometry, day, false, [&](const LegDistances& from) {
        return LineSpread({.length_m = body.length_m, .mean_m = body.mean_m}, from.others_m[other]);
    });
}

/// Upwards to a step, so that moments that hardly differ are one.
double stepped(double share) {
    constexpr double steps = 50.0;
    return std::min(1.0, std::ceil(share * steps) / steps);
}

}  // namespace

std::vector<HeatMoment> charge_moments(const BedCharge& charge, const ChargeDays& days) {
    const std::size_t others = charge.others.size();
    bool any = false;
    for (std::size_t i = 0; i < others; ++i) {
        any = any || (!days.of_same_circuit[i] && !days.others[i].empty());
    }
    if (days.own.empty() || !any) return {};
    const BedGeometry geometry = bed_geometry(charge);
    std::vector<HeatMoment> all;
    for (std::size_t month = 0; month < days.own.size(); ++month) {
        const Hours own = own_heat(charge, geometry, days.own[month]);
        std::vector<Hours> of_others;
        for (std::size_t i = 0; i < others; ++i) {
            const auto& list = days.others[i];
            Hours heat{};
            heat.fill(1.0);
            if (days.of_same_circuit[i]) {
                heat = own;
            } else if (month < list.size()) {
                heat = heat_of_other(charge, geometry, i, list[month]);
            }
            of_others.push_back(heat);
        }
        for (std::size_t hour = 0; hour < day_hours; ++hour) {
            HeatMoment moment{.own = stepped(own[hour])};
            for (const Hours& heat : of_others) moment.others.push_back(stepped(heat[hour]));
            all.push_back(std::move(moment));
        }
    }
    std::vector<HeatMoment> moments = worst_moments(std::move(all));
    const auto all_at_once = [](const HeatMoment& moment) {
        return moment.own >= 1.0 && std::all_of(moment.others.begin(), moment.others.end(),
                                                [](double share) { return share >= 1.0; });
    };
    if (std::any_of(moments.begin(), moments.end(), all_at_once)) return {};
    return moments;
}

}  // namespace heatmatch
