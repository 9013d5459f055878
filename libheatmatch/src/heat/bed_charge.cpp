#include "heatmatch/heat/bed_charge.hpp"

#include "air_gap.hpp"
#include "bed_bulk.hpp"
#include "bed_geometry.hpp"
#include "heat_input.hpp"
#include "hot_spots.hpp"
#include "line_spread.hpp"
#include "sentences.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <vector>

#include <boost/math/tools/roots.hpp>

#include "heatmatch/base/constants.hpp"
#include "heatmatch/base/units.hpp"
#include "heatmatch/heat/air.hpp"

namespace heatmatch {

using heat_sentences::say;

namespace {

constexpr double hottest_k = 3500.0;

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

/// Temperature above the bulk from the superposed legs at those distances [K].
double field_k(const BedCharge& charge, const BedGeometry& geometry, const BedBulk& bulk,
               std::span<const double> distances_m, double power_w) {
    const Conductivity& conductivity = charge.fill.conductivity;
    const double per_spread = power_w / geometry.heated_m / (2.0 * pi);
    const double bulk_theta = conductivity.theta(bulk.bed_k);
    const LineSpread spread({geometry.length_m, geometry.distances_m.front(), geometry.mean_m},
                            distances_m);
    const auto diffusivity_at = [&](double hot_k) {
        return conductivity.mean(bulk.bed_k, hot_k) /
               charge.fill.mean_capacity_j_m3k(bulk.bed_k, hot_k);
    };
    const auto spread_at = [&](double hot_k) {
        return spread.at(diffusivity_at(hot_k) * geometry.seconds);
    };
    // Newton in T; the spread is nearly independent of it.
    double before = 0.0;
    const auto settled_k = [&](double hot_k) {
        constexpr int most_steps = 60;
        constexpr double close_enough_k = 1e-5;
        double moved_before = 0.0;
        for (int step = 0; step < most_steps; ++step) {
            const double theta = bulk_theta + per_spread * (before + spread_at(hot_k));
            double moved = (theta - conductivity.theta(hot_k)) / conductivity.at(hot_k);
            // Steps shrink by a constant ratio: their remaining sum is added at once.
            const double share = moved_before != 0.0 ? moved / moved_before : 0.0;
            constexpr double shrinking = 0.5;
            moved_before = moved;
            if (std::fabs(share) < shrinking && step > 1) {
                moved /= 1.0 - share;
                moved_before = 0.0;
            }
            hot_k = std::clamp(hot_k + moved, 1.0, hottest_k);
            if (std::fabs(moved) < close_enough_k) break;
        }
        return hot_k;
    };
    const double start_k = std::min(
        conductivity.temperature_k(bulk_theta + per_spread * spread_at(bulk.bed_k)), hottest_k);
    const double hot_k = settled_k(start_k);
    if (geometry.days <= 1.0) return hot_k;
    // Days before change the diffusivity little: theirs is that of the last day.
    before = left_over(geometry, spread, diffusivity_at(hot_k));
    return settled_k(hot_k);
}

/// The hottest sheath above a bulk [K].
double sheath_k_of(const BedCharge& charge, const BedGeometry& geometry, const BedBulk& bulk,
                   double power_w) {
    const double q = power_w / geometry.heated_m;
    const double sand_k = field_k(charge, geometry, bulk, geometry.distances_m, power_w);
    const double sheath_k =
        across_gap_k(charge.legs.sheath_radius_m, geometry.distances_m.front(), q, sand_k);
    // Heat capacity of the rod: C dT/dt = q' - T/Z with Z = rise/q', for constant q'.
    const double rise = sheath_k - bulk.bed_k;
    const double taken_up = charge.rod_j_m_k * rise;
    if (rise <= 0.0 || taken_up <= 0.0) return sheath_k;
    return bulk.bed_k - rise * std::expm1(-geometry.seconds * q / taken_up);
}

double sheath_c_of(const BedCharge& charge, const BedGeometry& geometry, double power_w) {
    return sheath_k_of(charge, geometry, bulk_of(charge, geometry, power_w), power_w) -
           zero_celsius_k;
}

/// Temperature in the bed at a distance from the hottest leg, perpendicular to it at half its
/// length [K].
double beside_leg_k(const BedCharge& charge, const BedGeometry& geometry, const BedBulk& bulk,
                    double power_w, double distance_m) {
    std::vector<double> distances = geometry.distances_m;
    distances.front() = std::max(distances.front(), distance_m);
    for (std::size_t i = 1; i < distances.size(); ++i) {
        distances[i] = std::hypot(distances[i], distance_m);
    }
    return field_k(charge, geometry, bulk, distances, power_w);
}

/// Base temperatures of a spot: of one day, and the remainder of the days before at the edge. Air
/// between rod and fill makes the rod hotter, not the fill.
SpotBase spot_base(const BedCharge& charge, const BedGeometry& geometry, const BedBulk& bulk,
                   double power_w, double sheath_k) {
    SpotBase base{.edge_k = bulk.edge_k, .sheath_k = sheath_k};
    if (charge.gap_m > 0.0) {
        BedCharge touching = charge;
        touching.gap_m = 0.0;
        base.sheath_k = sheath_k_of(touching, bed_geometry(touching), bulk, power_w);
    }
    if (charge.days <= 1.0) return base;
    BedCharge today = charge;
    today.days = 1.0;
    base.edge_k = bulk_of(today, geometry, power_w).edge_k;
    base.before_k = std::max(0.0, bulk.edge_k - base.edge_k);
    return base;
}

}  // namespace

double sheath_only_c(const BedCharge& charge, double power_w) {
    check_bed_charge(charge, power_w);
    return sheath_c_of(charge, bed_geometry(charge), power_w);
}

BulkTemperatures bulk_only(const BedCharge& charge, double power_w) {
    check_bed_charge(charge, power_w);
    const BedBulk bulk = bulk_of(charge, bed_geometry(charge), power_w);
    const double air_k = charge.air_c + zero_celsius_k;
    const double spot_k = air_k + (bulk.edge_k - air_k) * concentration_of(charge);
    return {.bed_mean_c = bulk.bed_k - zero_celsius_k,
            .edge_c = bulk.edge_k - zero_celsius_k,
            .inner_c = spot_k - zero_celsius_k,
            .wall_c = charge.shell.side_surface_k(spot_k, air_k) - zero_celsius_k};
}

BedTemperatures bed_temperatures(const BedCharge& charge, double power_w, bool with_lid) {
    check_bed_charge(charge, power_w);
    const BedGeometry geometry = bed_geometry(charge);
    const BedBulk bulk = bulk_of(charge, geometry, power_w);
    const double sheath_k = sheath_k_of(charge, geometry, bulk, power_w);
    const double air_k = geometry.air_k;
    StoreSpots spots{.wall_k = air_k + (bulk.edge_k - air_k) * concentration_of(charge),
                     .lid_k = air_k,
                     .floor_k = air_k};
    if (with_lid) {
        spots = store_spots(charge, spot_base(charge, geometry, bulk, power_w, sheath_k), power_w);
    }
    spots.wall_k = std::min(sheath_k, spots.wall_k);
    const double inner_k = std::max({spots.wall_k, spots.lid_k, spots.floor_k, bulk.edge_k});
    return {.sheath_c = sheath_k - zero_celsius_k,
            .bed_mean_c = bulk.bed_k - zero_celsius_k,
            .edge_c = bulk.edge_k - zero_celsius_k,
            .inner_c = inner_k - zero_celsius_k,
            .floor_inner_c = spots.floor_k - zero_celsius_k,
            .wall_c = charge.shell.side_surface_k(spots.wall_k, air_k) - zero_celsius_k,
            .lid_c = charge.shell.lid_surface_k(spots.lid_k, air_k) - zero_celsius_k,
            .floor_c = charge.shell.floor_surface_k(spots.floor_k, air_k) - zero_celsius_k};
}

double sensed_lid_c(const BedCharge& charge, double power_w) {
    check_bed_charge(charge, power_w);
    const BedGeometry geometry = bed_geometry(charge);
    const BedBulk bulk = bulk_of(charge, geometry, power_w);
    const double sheath_k = sheath_k_of(charge, geometry, bulk, power_w);
    const double rim_k =
        sensed_lid_k(charge, spot_base(charge, geometry, bulk, power_w, sheath_k), power_w);
    return charge.shell.lid_surface_k(std::min(rim_k, bulk.edge_k), geometry.air_k) -
           zero_celsius_k;
}

double largest_power_w(const BedCharge& charge, double limit_c, double factor) {
    check_bed_charge(charge, 0.0);
    check_sheath_limit(limit_c);
    require_number("charge of a bed", "factor", factor, unit::none, {.low = 0.1, .high = 10.0},
                   [] { return say<"heat.itself">(with<"one">(1.0)); });
    constexpr double close_enough_k = 1e-6;
    if (limit_c <= charge.air_c + close_enough_k) return 0.0;
    const BedGeometry geometry = bed_geometry(charge);
    const auto excess = [&](double power_w) {
        const double sheath_c = sheath_c_of(charge, geometry, power_w);
        return charge.air_c + factor * (sheath_c - charge.air_c) - limit_c;
    };
    double high = 100.0 * charge.legs.heated_length_m();
    double low = 0.0;
    constexpr double most_w = 1e7;
    while (excess(high) < 0.0) {
        low = high;
        high *= 2.0;
        if (high > most_w) return most_w;
    }
    std::uintmax_t steps = 100;
    return boost::math::tools::toms748_solve(excess, low, high,
                                             boost::math::tools::eps_tolerance<double>(36), steps)
        .first;
}

std::optional<double> hours_to_limit(const BedCharge& charge, double power_w, double limit_c,
                                     double longest_h) {
    check_bed_charge(charge, power_w);
    check_sheath_limit(limit_c);
    require_number("charge of a bed", "longest_h", longest_h, unit::hour,
                   {.low = 1e-3, .high = 1e7}, say<"heat.hours_ahead">);
    BedCharge at = charge;
    at.days = 1.0;
    const auto excess = [&](double ln_hours) {
        at.hours = std::exp(ln_hours);
        return sheath_c_of(at, bed_geometry(at), power_w) - limit_c;
    };
    if (limit_c <= charge.air_c) return 0.0;
    constexpr double shortest_h = 1e-5;
    const double low = std::log(shortest_h);
    const double high = std::log(longest_h);
    if (excess(high) < 0.0) return std::nullopt;
    if (excess(low) >= 0.0) return shortest_h;
    std::uintmax_t steps = 100;
    return std::exp(boost::math::tools::toms748_solve(
                        excess, low, high, boost::math::tools::eps_tolerance<double>(36), steps)
                        .second);
}

double bed_temperature_c(const BedCharge& charge, double power_w, double distance_m) {
    check_bed_charge(charge, power_w);
    require_number("charge of a bed", "distance_m", distance_m, unit::metre,
                   {.low = 0.0, .high = 1000.0}, say<"heat.metres_from_leg">);
    const BedGeometry geometry = bed_geometry(charge);
    const BedBulk bulk = bulk_of(charge, geometry, power_w);
    return beside_leg_k(charge, geometry, bulk, power_w, distance_m) - zero_celsius_k;
}

double coil_above_sheath_k(double w_per_m) {
    constexpr double magnesia_w_mk = 2.3;
    constexpr double ratio = 0.85 / 0.40;
    return w_per_m / (2.0 * pi * magnesia_w_mk) * std::log(ratio);
}

double sheath_in_air_c(double diameter_m, double w_per_m, double emissivity, double air_c) {
    const double air_k = air_c + zero_celsius_k;
    const auto surplus = [&](double sheath_k) {
        const double square = sheath_k * sheath_k + air_k * air_k;
        return pi * diameter_m *
                   (free_convection_cylinder(diameter_m, sheath_k, air_k) * (sheath_k - air_k) +
                    emissivity * stefan_boltzmann * square * (sheath_k + air_k) *
                        (sheath_k - air_k)) -
               w_per_m;
    };
    if (w_per_m <= 0.0) return air_c;
    if (surplus(hottest_k) <= 0.0) return hottest_k - zero_celsius_k;
    std::uintmax_t steps = 100;
    return boost::math::tools::toms748_solve(surplus, air_k, hottest_k,
                                             boost::math::tools::eps_tolerance<double>(40), steps)
               .second -
           zero_celsius_k;
}

}  // namespace heatmatch
