#pragma once

#include "spot_form.hpp"

#include <optional>
#include <vector>

#include "heatmatch/heat/bed_charge.hpp"

namespace heatmatch {

/// Legs of one bank, upright or horizontal, `low_m` above the floor or, without it, centered; an
/// impossible height counts as just under the lid. `share` is that of each segment.
[[nodiscard]] std::vector<LegSegment> leg_segments(const LegLayout& legs, const StoreShell& shell,
                                                   const std::optional<double>& low_m,
                                                   double share = 1.0);

/// Hottest spots of the inside of a store [K].
struct StoreSpots {
    double wall_k = 0.0;
    double lid_k = 0.0;
    double floor_k = 0.0;
};

/// Base temperatures of the spots [K].
struct SpotBase {
    double edge_k = 0.0;    //!< mean at the bed's edge after one day only
    double before_k = 0.0;  //!< remainder of the days before there
    double sheath_k = 0.0;
};

/// Hottest spots of a charge: a share of the edge's rise, plus a form slightly less than
/// proportional to power. Shares, reach, power and factor were fitted to finite volumes in three
/// dimensions (480 stores: floors and lids from 4 % of the rise too cold to 24 % too hot, walls up
/// to 23 %); tests check them on other stores and print the result.
[[nodiscard]] StoreSpots store_spots(const BedCharge& charge, const SpotBase& base, double power_w);

/// Lowest temperature of the lid's inside at three quarters of its radius: below its mean [K].
[[nodiscard]] double sensed_lid_k(const BedCharge& charge, const SpotBase& base, double power_w);

}  // namespace heatmatch
