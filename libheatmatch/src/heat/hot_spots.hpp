#pragma once

#include "spot_form.hpp"

#include <optional>
#include <vector>

#include "heatmatch/heat/bed_charge.hpp"

namespace heatmatch {

/// The legs of a charge as they stand or lie, `low_m` over the floor or, without, centred; an
/// impossible height counts as under the lid.
[[nodiscard]] std::vector<LegSegment> leg_segments(const LegLayout& legs, const StoreShell& shell,
                                                   const std::optional<double>& low_m);

/// Hottest spots of the inside of a store [K].
struct StoreSpots {
    double wall_k = 0.0;
    double lid_k = 0.0;
    double floor_k = 0.0;
};

/// What of the bulk the spots stand over [K].
struct SpotBase {
    double edge_k = 0.0;    //!< mean of the bed's edge, had there been one day only
    double before_k = 0.0;  //!< what days before left there
    double sheath_k = 0.0;
};

/// Spots of a charge: over a share of the edge's rise, and by a form a little less than
/// proportional. Shares, reach, power and factor were fitted to finite volumes in three dimensions
/// (480 stores: floors and lids 4 % of the rise too cold to 24 % too hot, walls up to 23 %);
/// other stores judge them (tests print it).
[[nodiscard]] StoreSpots store_spots(const BedCharge& charge, const SpotBase& base, double power_w);

/// The lid's inside where it is coldest at three quarters of its radius: less than its mean [K].
[[nodiscard]] double sensed_lid_k(const BedCharge& charge, const SpotBase& base, double power_w);

}  // namespace heatmatch
