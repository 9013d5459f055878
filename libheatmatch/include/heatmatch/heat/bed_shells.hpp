#pragma once

#include <array>
#include <cstddef>

#include "heatmatch/heat/conductivity.hpp"
#include "heatmatch/heat/leg_layout.hpp"
#include "heatmatch/heat/store_shell.hpp"

namespace heatmatch {

/// A bed of eight shells around its legs, for power that changes. The shells are the isotherms
/// around the middle of a line of length L, area `2 pi r L sqrt(1 + 4r²/L²)`, volume `(pi L³/6)((1
/// + 4r²/L²)^1.5 - 1)`, with `(asinh(L/2 r1) - asinh(L/2 r2))/(2 pi k L)` between two; the
/// outermost contains the rest of the bed and meets the wall. Heat enters at the root mean square
/// distance of the legs from their middle, r_b; the sheath is above that as in a steady field:
/// `Theta_s = Theta(r_b) + q'/(2 pi) (N ln r_b - sum ln d_j)`.
/// Against a solution in three dimensions (printed by tests) within 8 % of the rise for one, two or
/// four legs up to 90 mm apart, 1 h to steady. The result is too hot for many legs spread through a
/// drum until their fields overlap: eight legs 90 mm apart 46 % at 1 h, 10 % at 8 h. Rods have no
/// heat capacity here. @cite carslaw-jaeger
class BedShells {
  public:
    /// A bed of uniform temperature. Throws InvalidInput for temperatures out of range, and for a
    /// fill, a shell or legs without a size.
    BedShells(BedFill fill, StoreShell shell, LegLayout legs, double air_c, double start_c);

    /// Constant power into all legs together for that time, in implicit steps of at most 600 s; the
    /// heat balance of each closes to rounding (a bed stays below about 3000 °C). Throws
    /// InvalidInput for power or time below zero or not finite.
    void step(double power_w, double seconds);
    /// The air around the store from now on. Throws InvalidInput out of range.
    void set_air_c(double air_c);

    [[nodiscard]] double sheath_c() const;    //!< of the hottest leg, at the power of the last step
    [[nodiscard]] double bed_mean_c() const;  //!< by mass
    [[nodiscard]] double edge_c() const;      //!< mean where the bed meets its wall
    [[nodiscard]] double wall_c() const;      //!< of the outer wall at its hottest spot
    [[nodiscard]] double lid_c() const;       //!< outer surface of the lid
    [[nodiscard]] double stored_kwh() const;  //!< since the start; below zero where the bed has
                                              //!< cooled
    [[nodiscard]] double lost_kwh() const;    //!< to the air since the start
    [[nodiscard]] double supplied_kwh() const;
    [[nodiscard]] double loss_w() const;  //!< present loss to the air

    static constexpr std::size_t shell_count = 8;
    static constexpr double longest_step_s = 600.0;

  private:
    static constexpr std::size_t node_count = shell_count + 1;  // the edge has no heat capacity
    using Nodes = std::array<double, node_count>;

    void lay_out();
    void advance(double power_w, double seconds, int halvings_left);
    [[nodiscard]] bool settle(Nodes& t_k, double power_w, double seconds) const;

    BedFill fill_;
    StoreShell shell_;
    LegLayout legs_;
    double air_k_ = 0.0;
    double start_k_ = 0.0;
    double inner_form_ = 0.0;     //!< from the radius where heat enters to the first node [1/m]
    Nodes form_{};                //!< from a node to the next one out [1/m]
    Nodes mass_kg_{};             //!< the edge has none
    double superposition_ = 0.0;  //!< N ln r_b - sum ln d_j
    Nodes t_k_{};
    double power_w_ = 0.0;
    double lost_j_ = 0.0;
    double supplied_j_ = 0.0;
};

}  // namespace heatmatch
