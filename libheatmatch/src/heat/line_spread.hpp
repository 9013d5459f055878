#pragma once

#include <span>
#include <vector>

namespace heatmatch {

/// Parameters of the spread of heat around parallel legs.
struct LineShape {
    double length_m = 0.0;
    double surface_m = 0.0;  //!< radius of a leg [m]
    double mean_m = 0.0;     //!< radius at which the bed has its mean temperature [m]
};

/// Sum over the legs at given distances of `asinh(L/2 d) - asinh(L/2 rho)`, where `rho` is the
/// reach of their heat after a time of `diffusivity_time_m2` = a t. Heat of a line reaches `d
/// exp(E1(d²/4at)/2)`: the logarithm is the rise due to that line, nearly zero at a leg that it has
/// not reached. After a long time the reach is limited to the radius of the mean temperature. At a
/// leg's own surface, where the heat is generated instead of in the axis, `sqrt(d² + 2.246 a t)`
/// approximates a cylinder in the first minutes. @cite carslaw-jaeger
class LineSpread {
  public:
    LineSpread(const LineShape& shape, std::span<const double> distances_m);
    [[nodiscard]] double at(double diffusivity_time_m2) const;

  private:
    /// Constants of one leg.
    struct Leg {
        double square_m2 = 0.0;  //!< square of its distance
        double reach = 0.0;      //!< exp(asinh(L/2 d))
        bool own_surface = false;
    };
    double half_m_;
    double per_mean_m4_;
    std::vector<Leg> legs_{};
};

}  // namespace heatmatch
