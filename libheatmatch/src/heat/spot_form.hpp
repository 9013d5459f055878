#pragma once

#include <span>
#include <vector>

namespace heatmatch {

/// A heated leg in the store: x and y from its axis, z above its floor; upright or along x.
struct LegSegment {
    double x_m = 0.0;  //!< of its lower end, or of that towards -x
    double y_m = 0.0;
    double z_m = 0.0;
    double length_m = 0.0;
    double radius_m = 0.0;  //!< the minimum distance of a spot from its axis [m]
    double share = 1.0;     //!< its power per meter over that of the legs with the most
    bool along_x = false;
};

/// A spot on the inside of wall, lid or floor, and its normal.
struct SurfaceSpot {
    double x_m = 0.0;
    double y_m = 0.0;
    double z_m = 0.0;
    double normal_x = 0.0;
    double normal_y = 0.0;
    double normal_z = 0.0;
};

/// Conduction to a spot.
struct SpotPath {
    double reach_m = 0.0;     //!< reach of the heat of a point
    double sink_share = 0.6;  //!< mean depth of the heat sink behind the surface, in 1/H
    double mirror = 0.0;      //!< share of legs mirrored in floor and lid
    double height_m = 0.0;    //!< from floor to lid
};

/// Heat transfer at a spot, over the conductivity of the fill there.
struct SpotLeaves {
    double u_over_k_m = 0.0;  //!< of the surface [1/m]
    double skin_m = 0.0;      //!< conductivity times thickness of a metal skin
    double floor_u_over_k_m = 0.0;
    double lid_u_over_k_m = 0.0;
};

/// Rise at a spot for 1 W/m of legs, times their `share`, in a fill of 1 W/mK: for each point of a
/// leg at `r`, `h` below the surface, `2 erfc(r/reach)/(4 pi r) (1 + H h)/(1 + H r)^2`, H its
/// `U/k`. This is the full mirror image for an adiabatic surface, and correct near and far for one
/// with heat loss. The surface loss follows later, from `sink_share/H` further away. Legs mirrored
/// in floor and lid contribute as well, reduced by `2 H r/(1 + H r)` with the same delay. Within 3
/// % of the exact half-space beneath the point; a skin spreads the heat by `x exp(x) E1(x)`, `x`
/// the distance over its `skin_m`. @cite carslaw-jaeger
class SpotForm {
  public:
    SpotForm(std::span<const LegSegment> legs, const SurfaceSpot& spot, const SpotPath& path);

    [[nodiscard]] double at(const SpotLeaves& leaves) const;

  private:
    /// A point of a leg, or of its image.
    struct Point {
        double weight = 0.0;
        double r_over_reach = 0.0;
        double r_m = 0.0;
        double deep_m = 0.0;
        double come = 0.0;  //!< contribution without surface loss
        int image = 0;      //!< 1 in the floor, 2 in the lid
    };
    void add_line(const LegSegment& leg, const SurfaceSpot& spot, const SpotPath& path, int image);

    double reach_m_ = 1.0;
    double sink_share_ = 0.0;
    std::vector<Point> points_{};
};

}  // namespace heatmatch
