#include "bed_sheath.hpp"

#include "air_gap.hpp"
#include "line_spread.hpp"

#include <algorithm>
#include <cmath>
#include <span>
#include <utility>
#include <vector>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/units.hpp"

namespace heatmatch {

namespace {

constexpr double hottest_fill_k = 3500.0;

/// Remainder of the days before around the legs: a day's charge started earlier, minus the part
/// missing since its end. Days of 24 h add up to one long charge.
double left_over(const BedGeometry& geometry, const LineSpread& spread, double diffusivity) {
    constexpr double negligible = 1e-6;
    const auto after = [&](double seconds) { return spread.at(diffusivity * seconds); };
    double sum = 0.0;
    for (int before = 1; before < geometry.days; ++before) {
        const double day = before;
        const double left =
            after(day * seconds_of_day + geometry.seconds) - after(day * seconds_of_day);
        sum += left;
        if (left < negligible) break;
    }
    return sum;
}

/// Legs of equal power at their distances from a place.
struct LineSource {
    double per_spread = 0.0;  //!< `q'/(2 pi)` [W/m]
    LineSpread spread;
    double before = 0.0;     //!< remainder of the days before
    double now = 1.0;        //!< share of its largest power at the moment
    double day_share = 1.0;  //!< of the days before
};

double theta_of(std::span<const LineSource> sources, double diffusivity_time_m2) {
    double theta = 0.0;
    for (const LineSource& source : sources) {
        theta += source.per_spread * (source.day_share * source.before +
                                      source.now * source.spread.at(diffusivity_time_m2));
    }
    return theta;
}

/// The legs of all circuits, seen from a place at those distances; without a moment all at their
/// largest power.
std::vector<LineSource> sources_of(const BedCharge& charge, const BedGeometry& geometry,
                                   const LegDistances& from, double power_w,
                                   const HeatMoment* moment = nullptr) {
    std::vector<LineSource> sources;
    sources.reserve(1 + charge.others.size());
    const LegBody& body = geometry.body;
    sources.push_back(
        {.per_spread = power_w / geometry.heated_m / (2.0 * pi),
         .spread = LineSpread(
             {.length_m = body.length_m, .surface_m = geometry.surface_m, .mean_m = body.mean_m},
             from.own_m)});
    for (std::size_t i = 0; i < charge.others.size(); ++i) {
        const LegBody& other = geometry.other_bodies[i];
        sources.push_back(
            {.per_spread = charge.others[i].w_per_m() / (2.0 * pi),
             .spread =
                 LineSpread({.length_m = other.length_m, .mean_m = other.mean_m}, from.others_m[i]),
             .now = moment != nullptr ? moment->others[i] : 1.0,
             .day_share = charge.others[i].day_share});
    }
    if (moment != nullptr) sources.front().now = moment->own;
    return sources;
}

/// Temperature above the bulk from the superposed legs [K].
double field_k(const BedCharge& charge, const BedGeometry& geometry, const BedBulk& bulk,
               std::vector<LineSource> sources) {
    const Conductivity& conductivity = charge.fill.conductivity;
    const double bulk_theta = conductivity.theta(bulk.bed_k);
    const auto diffusivity_at = [&](double hot_k) {
        return conductivity.mean(bulk.bed_k, hot_k) /
               charge.fill.mean_capacity_j_m3k(bulk.bed_k, hot_k);
    };
    const auto rise_at = [&](double hot_k) {
        return theta_of(sources, diffusivity_at(hot_k) * geometry.seconds);
    };
    // Newton in T; the spread is nearly independent of it.
    const auto settled_k = [&](double hot_k) {
        constexpr int most_steps = 60;
        constexpr double close_enough_k = 1e-5;
        double moved_before = 0.0;
        for (int step = 0; step < most_steps; ++step) {
            const double theta = bulk_theta + rise_at(hot_k);
            double moved = (theta - conductivity.theta(hot_k)) / conductivity.at(hot_k);
            // Steps shrink by a constant ratio: their remaining sum is added at once.
            const double share = moved_before != 0.0 ? moved / moved_before : 0.0;
            constexpr double shrinking = 0.5;
            moved_before = moved;
            if (std::fabs(share) < shrinking && step > 1) {
                moved /= 1.0 - share;
                moved_before = 0.0;
            }
            hot_k = std::clamp(hot_k + moved, 1.0, hottest_fill_k);
            if (std::fabs(moved) < close_enough_k) break;
        }
        return hot_k;
    };
    const double start_k =
        std::min(conductivity.temperature_k(bulk_theta + rise_at(bulk.bed_k)), hottest_fill_k);
    const double hot_k = settled_k(start_k);
    if (geometry.days <= 1.0) return hot_k;
    // Days before change the diffusivity little: theirs is that of the last day.
    for (LineSource& source : sources) {
        source.before = left_over(geometry, source.spread, diffusivity_at(hot_k));
    }
    return settled_k(hot_k);
}

/// The sheath of one leg above a bulk at a moment; null for all legs at their largest power [K].
double leg_sheath_k(const BedCharge& charge, const BedGeometry& geometry, const BedBulk& bulk,
                    const LegDistances& from, double power_w, const HeatMoment* moment) {
    const double q = (moment != nullptr ? moment->own : 1.0) * power_w / geometry.heated_m;
    std::vector<LineSource> sources = sources_of(charge, geometry, from, power_w, moment);
    double unheated_k = bulk.bed_k;  // without its own power
    if (sources.size() > 1) {
        unheated_k = field_k(charge, geometry, bulk, {sources.begin() + 1, sources.end()});
    }
    const double sand_k = field_k(charge, geometry, bulk, std::move(sources));
    const double sheath_k =
        across_gap_k(charge.legs.sheath_radius_m, from.own_m.front(), q, sand_k);
    // Heat capacity of the rod: C dT/dt = q' - T/Z with Z = rise/q', for constant q'.
    const double rise = sheath_k - unheated_k;
    const double taken_up = charge.rod_j_m_k * rise;
    if (rise <= 0.0 || taken_up <= 0.0) return sheath_k;
    return unheated_k - rise * std::expm1(-geometry.seconds * q / taken_up);
}

/// The same charge with another circuit as its own.
BedCharge seen_by(const BedCharge& charge, std::size_t other, double power_w) {
    BedCharge seen = charge;
    seen.legs = charge.others[other].legs;
    seen.others[other] = {.legs = charge.legs, .power_w = power_w};
    seen.moments.clear();  // they are those of this circuit
    return seen;
}

}  // namespace

double sheath_k_of(const BedCharge& charge, const BedGeometry& geometry, const BedBulk& bulk,
                   double power_w) {
    double hottest = 0.0;
    for (const LegDistances& from : geometry.distances) {
        const auto keep = [&](const HeatMoment* moment) {
            hottest =
                std::max(hottest, leg_sheath_k(charge, geometry, bulk, from, power_w, moment));
        };
        if (charge.moments.empty()) keep(nullptr);
        for (const HeatMoment& moment : charge.moments) keep(&moment);
    }
    return hottest;
}

double any_sheath_k(const BedCharge& charge, const BedBulk& bulk, double power_w, double own_k) {
    double hottest = own_k;
    for (std::size_t i = 0; i < charge.others.size(); ++i) {
        const BedCharge seen = seen_by(charge, i, power_w);
        hottest = std::max(hottest,
                           sheath_k_of(seen, bed_geometry(seen), bulk, charge.others[i].power_w));
    }
    return hottest;
}

double beside_leg_k(const BedCharge& charge, const BedGeometry& geometry, const BedBulk& bulk,
                    double power_w, double distance_m) {
    double hottest = 0.0;
    for (LegDistances from : geometry.distances) {
        from.own_m.front() = std::max(from.own_m.front(), distance_m);
        for (std::size_t i = 1; i < from.own_m.size(); ++i) {
            from.own_m[i] = std::hypot(from.own_m[i], distance_m);
        }
        for (std::vector<double>& other_m : from.others_m) {
            for (double& apart_m : other_m) apart_m = std::hypot(apart_m, distance_m);
        }
        hottest = std::max(
            hottest, field_k(charge, geometry, bulk, sources_of(charge, geometry, from, power_w)));
    }
    return hottest;
}

}  // namespace heatmatch
