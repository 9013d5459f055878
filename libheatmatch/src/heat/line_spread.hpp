#pragma once

#include <span>
#include <vector>

namespace heatmatch {

/// What the spread of heat around parallel legs depends on.
struct LineShape {
    double length_m = 0.0;
    double surface_m = 0.0;  //!< radius of a leg [m]
    double mean_m = 0.0;     //!< where the bed has its mean temperature [m]
};

/// Sum over the legs at given distances of `asinh(L/2 d) - asinh(L/2 rho)`, `rho` as far as their
/// heat has come in a time of `diffusivity_time_m2` = a t. Heat of a line comes as far as `d
/// exp(E1(d²/4at)/2)`: its logarithm is that line's rise, next to nothing at a leg that it has not
/// yet met. In the long run it ends where the bed has its mean. At a leg's own surface, where the
/// heat begins, not in its axis, `sqrt(d² + 2.246 a t)` keeps the first minutes nearer a
/// cylinder's.
/// @cite carslaw-jaeger
class LineSpread {
  public:
    LineSpread(const LineShape& shape, std::span<const double> distances_m);
    [[nodiscard]] double at(double diffusivity_time_m2) const;

  private:
    /// What no time changes of one leg.
    struct Leg {
        double square_m2 = 0.0;  //!< of its distance
        double reach = 0.0;      //!< exp(asinh(L/2 d))
        bool own_surface = false;
    };
    double half_m_;
    double per_mean_m4_;
    std::vector<Leg> legs_{};
};

}  // namespace heatmatch
