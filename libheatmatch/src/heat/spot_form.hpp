#pragma once

#include <span>

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
    double sink_share = 0.6;  //!< how deep in 1/H what the surface takes seems to lie, in the mean
    double mirror = 0.0;      //!< share of legs mirrored in floor and lid
    double height_m = 0.0;    //!< from floor to lid, `u/k` of both
    double floor_u_over_k_m = 0.0;
    double lid_u_over_k_m = 0.0;
};

/// Rise at a spot for a watt a metre of legs in a fill of 1 W/mK: of each point of a leg at `r`,
/// `h` deep under the surface, `2 erfc(r/reach)/(4 pi r) (1 + H h)/(1 + H r)^2`, H its `U/k`: whole
/// mirror of a surface that lets nothing through, and the limits of one that does near and far.
/// What the surface takes comes later, from `sink_share/H` further on. Legs mirrored in floor and
/// lid add theirs, less `2 H r/(1 + H r)` of it that those take, as late. Within 3 % of the exact
/// half-space beneath the point; a skin spreads it by `x exp(x) E1(x)`, `x` the distance over its
/// `skin_m`. @cite carslaw-jaeger
[[nodiscard]] double spot_form(std::span<const LegSegment> legs, const SurfaceSpot& spot,
                               const SpotPath& path);

}  // namespace heatmatch
