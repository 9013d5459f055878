#pragma once

#include <array>
#include <cstddef>
#include <span>

#include "heatmatch/heat/leg_layout.hpp"
#include "heatmatch/heat/store_shell.hpp"

namespace heatmatch {

/// Contribution of legs around an axis beyond their mean around it, as a Fourier series: a leg at
/// radius b and angle f adds `(1/m)(r</r>)^m cos m(angle - f)` for a heat of 2 pi per meter and
/// every whole m. Each term lags: after a step of power it is at `erf(sqrt(a t) m/b)` of its steady
/// value, a sum of many exponentials, of which four are used. @cite carslaw-jaeger
class LegModes {
  public:
    static constexpr std::size_t most_modes = 16;  // terms of higher order are steady at once
    static constexpr std::size_t rates = 4;
    static constexpr std::size_t state_size = most_modes * (rates + 2);
    using Waves = std::array<double, most_modes>;

    LegModes(const LegLayout& legs, const LegLayout::Leg& hottest, const StoreShell& shell);

    /// Steady terms at a spot.
    [[nodiscard]] Waves at(double x_m, double y_m) const;
    /// Updates the power that the terms have reached, at the legs and at the wall, after that time.
    void follow(std::span<double> state_w, double power_w, double diffusivity_m2_s,
                double seconds) const;
    /// Missing part of power times terms where the terms have reached `state_w`.
    [[nodiscard]] static double lacking(std::span<const double> state_w, const Waves& waves,
                                        double power_w);
    /// Direction, of length 1, of the spot of the wall that receives the most heat.
    [[nodiscard]] const LegLayout::Leg& wall_spot() const { return wall_spot_; }
    /// Terms at a spot of the wall in that direction: `(b/R)^m cos m(angle - f)`.
    [[nodiscard]] Waves at_wall(const LegLayout::Leg& spot) const;
    /// Power times those terms, for that Biot number of the wall's heat loss: `2 (b/R)^m cos
    /// m(angle - f)/(m + Bi)`.
    [[nodiscard]] static double wall(std::span<const double> state_w, const Waves& waves,
                                     double biot);

  private:
    LegLayout legs_{};
    double ring_m_ = 0.0;  //!< radius of the hottest leg
    double wall_m_ = 0.0;
    double to_wall_m_ = 0.0;  //!< distance from the leg nearest to the wall's hottest spot
    std::size_t count_ = 0;
    LegLayout::Leg wall_spot_{.x_m = 1.0};
};

}  // namespace heatmatch
