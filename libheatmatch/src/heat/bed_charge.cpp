#include "heatmatch/heat/bed_charge.hpp"

#include "bed_bulk.hpp"
#include "bed_geometry.hpp"
#include "bed_sheath.hpp"
#include "heat_input.hpp"
#include "hot_spots.hpp"
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

double sheath_c_of(const BedCharge& charge, const BedGeometry& geometry, double power_w) {
    return sheath_k_of(charge, geometry, bulk_of(charge, geometry, power_w), power_w) -
           zero_celsius_k;
}

/// Base temperatures of a spot: of one day, and the remainder of the days before at the edge. Air
/// between rod and fill makes the rod hotter, not the fill.
SpotBase spot_base(const BedCharge& charge, const BedGeometry& geometry, const BedBulk& bulk,
                   double power_w, double sheath_k) {
    SpotBase base{.edge_k = bulk.edge_k, .sheath_k = sheath_k};
    if (charge.gap_m > 0.0) {
        BedCharge touching = charge;
        touching.gap_m = 0.0;
        base.sheath_k = any_sheath_k(touching, bulk, power_w,
                                     sheath_k_of(touching, bed_geometry(touching), bulk, power_w));
    }
    if (charge.days <= 1.0) return base;
    BedCharge today = charge;
    today.days = 1.0;
    base.edge_k = bulk_of(today, geometry, power_w).edge_k;
    base.before_k = std::max(0.0, bulk.edge_k - base.edge_k);
    return base;
}

}  // namespace

double BedCharge::others_w() const {
    double sum = 0.0;
    for (const HeatedLegs& other : others) sum += other.mean_w();
    return sum;
}

double sheath_only_c(const BedCharge& charge, double power_w) {
    check_bed_charge(charge, power_w);
    return sheath_c_of(charge, bed_geometry(charge), power_w);
}

BulkTemperatures bulk_only(const BedCharge& charge, double power_w) {
    check_bed_charge(charge, power_w);
    const BedBulk bulk = bulk_of(charge, bed_geometry(charge), power_w);
    const double air_k = charge.air_c + zero_celsius_k;
    const double spot_k = air_k + (bulk.edge_k - air_k) * concentration_of(charge, power_w);
    return {.bed_mean_c = bulk.bed_k - zero_celsius_k,
            .edge_c = bulk.edge_k - zero_celsius_k,
            .inner_c = spot_k - zero_celsius_k,
            .wall_c = charge.shell.side_surface_k(spot_k, air_k) - zero_celsius_k};
}

BedTemperatures bed_temperatures(const BedCharge& charge, double power_w, bool with_lid) {
    check_bed_charge(charge, power_w);
    const BedGeometry geometry = bed_geometry(charge);
    const BedBulk bulk = bulk_of(charge, geometry, power_w);
    const double own_k = sheath_k_of(charge, geometry, bulk, power_w);
    const double sheath_k = any_sheath_k(charge, bulk, power_w, own_k);
    const double air_k = geometry.air_k;
    StoreSpots spots{.wall_k = air_k + (bulk.edge_k - air_k) * concentration_of(charge, power_w),
                     .lid_k = air_k,
                     .floor_k = air_k};
    if (with_lid) {
        spots = store_spots(charge, spot_base(charge, geometry, bulk, power_w, sheath_k), power_w);
    }
    spots.wall_k = std::min(sheath_k, spots.wall_k);
    const double inner_k = std::max({spots.wall_k, spots.lid_k, spots.floor_k, bulk.edge_k});
    return {.sheath_c = own_k - zero_celsius_k,
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
    const double sheath_k =
        any_sheath_k(charge, bulk, power_w, sheath_k_of(charge, geometry, bulk, power_w));
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
    if (!charge.others.empty() && excess(0.0) >= 0.0) return 0.0;
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
    // Shares of a day do not hold for another time.
    at.moments.clear();
    for (HeatedLegs& other : at.others) other.day_share = 1.0;
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
