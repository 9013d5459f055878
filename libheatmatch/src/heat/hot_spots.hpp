#pragma once

#include <span>
#include <vector>

#include "heatmatch/heat/bed_charge.hpp"

namespace heatmatch {

/// A heated leg in the store: x and y from its axis, z over its floor; upright or along x.
struct LegSegment {
    double x_m = 0.0;  //!< of its lower end, or of that towards -x
    double y_m = 0.0;
    double z_m = 0.0;
    bool along_x = false;
};

/// A spot of the inside of wall, lid or floor, and where it faces.
struct SurfaceSpot {
    double x_m = 0.0;
    double y_m = 0.0;
    double z_m = 0.0;
    double normal_x = 0.0;
    double normal_y = 0.0;
    double normal_z = 0.0;
};

/// How heat comes to a spot and leaves it.
struct SpotPath {
    double length_m = 0.0;    //!< of a leg
    double radius_m = 0.0;    //!< of a leg: no spot is nearer to its axis
    double reach_m = 0.0;     //!< as far as heat of a point has come
    double u_over_k_m = 0.0;  //!< of the surface over that of the fill [1/m]
    double skin_m = 0.0;  //!< conductivity times thickness of a metal skin over that of the fill
};

/// Rise at a spot for a watt a metre of legs in a fill of 1 W/mK: of each point of a leg at `r`,
/// `h` deep under the surface, `2 erfc(r/reach)/(4 pi r) (1 + H h)/(1 + H r)^2`, H its `U/k`: whole
/// mirror of a surface that lets nothing through, and the limits of one that does near and far.
/// Within 3 % of the exact half-space beneath the point; a skin spreads it by `x exp(x) E1(x)`, `x`
/// the distance over its `skin_m`. @cite carslaw-jaeger
[[nodiscard]] double spot_form(std::span<const LegSegment> legs, const SurfaceSpot& spot,
                               const SpotPath& path);

/// The legs of a charge as they stand or lie.
[[nodiscard]] std::vector<LegSegment> leg_segments(const LegLayout& legs, const StoreShell& shell);

/// What the hottest spot of a face stands over, and what leaves it.
struct FaceHeat {
    double base_k = 0.0;   //!< of the face far from the legs
    double hot_k = 0.0;    //!< of the fill on the way from the legs, about
    double reach_m = 0.0;  //!< in the long run
    double u_w_m2k = 0.0;
    double skin_w_k = 0.0;
};

/// Hottest of the spots where legs give `w_per_m` [K].
[[nodiscard]] double hottest_spot_k(const BedCharge& charge, std::span<const LegSegment> legs,
                                    std::span<const SurfaceSpot> spots, double w_per_m,
                                    const FaceHeat& face);

/// Hottest spots of the inside of a store [K].
struct StoreSpots {
    double wall_k = 0.0;  //!< the air's where all legs stand nearer to the axis than to the wall
    double lid_k = 0.0;
    double floor_k = 0.0;
};

/// Spots of a charge whose bed meets its wall at `edge_k` in the mean: over 0.4 of its rise, heat
/// reaching two radii in the long run: fits 160 finite-volume solutions, floors from 6 % of the
/// rise too cold to 35 % too hot; others judge it (tests print it).
[[nodiscard]] StoreSpots store_spots(const BedCharge& charge, double edge_k, double sheath_k,
                                     double power_w);

}  // namespace heatmatch
