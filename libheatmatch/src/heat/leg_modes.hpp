#pragma once

#include <array>
#include <cstddef>
#include <span>

#include "heatmatch/heat/leg_layout.hpp"
#include "heatmatch/heat/store_shell.hpp"

namespace heatmatch {

/// What legs around an axis add to their mean around it, wave by wave: a leg at radius b and angle
/// f adds `(1/m)(r</r>)^m cos m(angle - f)` for a heat of 2 pi a metre and every whole m. A wave
/// takes its time: after a step of power it stands at `erf(sqrt(a t) m/b)` of that, the share of
/// many exponentials, of which four serve. @cite carslaw-jaeger
class LegModes {
  public:
    static constexpr std::size_t most_modes = 16;  // finer ones stand at once
    static constexpr std::size_t rates = 4;
    static constexpr std::size_t state_size = most_modes * (rates + 2);
    using Waves = std::array<double, most_modes>;

    LegModes(const LegLayout& legs, const LegLayout::Leg& hottest, const StoreShell& shell);

    /// Of the steady waves at a spot.
    [[nodiscard]] Waves at(double x_m, double y_m) const;
    [[nodiscard]] const Waves& at_hottest() const { return at_hottest_; }
    /// Powers that the waves have followed to, at the legs and at the wall, after that long.
    void follow(std::span<double> state_w, double power_w, double diffusivity_m2_s,
                double seconds) const;
    /// Watts times waves that have yet to come where the power has been followed to `state_w`.
    [[nodiscard]] static double lacking(std::span<const double> state_w, const Waves& waves,
                                        double power_w);
    /// Watts times waves at the hottest spot around the wall, which loses heat of that Biot number:
    /// `2 (b/R)^m cos m(angle - f)/(m + Bi)`.
    [[nodiscard]] double wall(std::span<const double> state_w, double biot) const;

  private:
    LegLayout legs_{};
    double ring_m_ = 0.0;  //!< radius of the hottest leg
    double wall_m_ = 0.0;
    double to_wall_m_ = 0.0;  //!< from the leg nearest to the wall's hottest spot
    std::size_t count_ = 0;
    Waves at_hottest_{};
    Waves at_wall_{};
};

}  // namespace heatmatch
