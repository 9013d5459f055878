#pragma once

#include <span>
#include <vector>

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

/// How heat comes to a spot.
struct SpotPath {
    double length_m = 0.0;    //!< of a leg
    double radius_m = 0.0;    //!< of a leg: no spot is nearer to its axis
    double reach_m = 0.0;     //!< as far as heat of a point has come
    double sink_share = 0.6;  //!< how deep in 1/H what the surface takes seems to lie, in the mean
    double mirror = 0.0;      //!< share of legs mirrored in floor and lid
    double height_m = 0.0;    //!< from floor to lid
};

/// How heat leaves a spot, over the conductivity of the fill there.
struct SpotLeaves {
    double u_over_k_m = 0.0;  //!< of the surface [1/m]
    double skin_m = 0.0;      //!< conductivity times thickness of a metal skin
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
        double come = 0.0;  //!< what nothing takes
        int image = 0;      //!< 1 in the floor, 2 in the lid
    };
    void add_line(const LegSegment& leg, const SurfaceSpot& spot, const SpotPath& path, int image);

    double reach_m_ = 1.0;
    double sink_share_ = 0.0;
    std::vector<Point> points_{};
};

}  // namespace heatmatch
