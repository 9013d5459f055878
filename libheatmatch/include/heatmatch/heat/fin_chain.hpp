#pragma once

#include <limits>
#include <optional>
#include <span>
#include <vector>

namespace heatmatch {

/// What is shorter conducts without a drop and has no place in a chain.
inline constexpr double shortest_segment_m = 1e-9;

/// A uniform stretch of rod, tube or wire that conducts along itself and loses heat sideways.
struct FinSegment {
    double length_m = std::numeric_limits<double>::infinity();  //!< of the two ends only: infinite
    double ka_w_m_k = 0.0;   //!< conductivity times cross-section, summed over materials [W m/K]
    double loss_w_mk = 0.0;  //!< heat lost by a metre per kelvin; 0 for plain conduction [W/mK]
    double environment_c = 0.0;  //!< what it loses heat to [°C]
    double heat_w_m = 0.0;       //!< made in a metre [W/m]
};

/// What is held at the outer ends; an end neither infinite nor held is closed to heat.
struct FinEnds {
    std::optional<double> left_c{};   //!< [°C]
    std::optional<double> right_c{};  //!< [°C]
};

/// Segments end to end, solved exactly: `T'' kA = g (T - T_env) - q'`, each a conductance
/// `G coth(mL)` at its ends and `G/sinh(mL)` between them, `m = sqrt(g/kA)`, `G = sqrt(g kA)`,
/// `T* = T_env + q'/g`; an infinite one `G`. Valid where the rod is thin: `G` small beside `kA/r`.
/// @cite incropera
class FinChain {
  public:
    /// heat_at_joint_w: heat brought in at the joint after each segment but the last [W]; may be
    /// shorter. Throws InvalidInput where a number has no meaning or no temperature is fixed by
    /// anything.
    FinChain(std::span<const FinSegment> segments, std::span<const double> heat_at_joint_w = {},
             const FinEnds& ends = {});

    /// Temperatures of the joints between segments, in their order [°C].
    [[nodiscard]] const std::vector<double>& joint_c() const { return joint_c_; }
    /// Temperature in a segment [°C] at a distance from its left end; in an infinite first segment
    /// the distance counts from its right end.
    [[nodiscard]] double temperature_c(std::size_t segment, double distance_m) const;
    /// Heat that flows to the right there [W].
    [[nodiscard]] double flow_w(std::size_t segment, double distance_m) const;
    [[nodiscard]] const std::vector<FinSegment>& segments() const { return segments_; }

  private:
    [[nodiscard]] double end_c(std::size_t segment, bool right) const;

    std::vector<FinSegment> segments_;
    std::vector<double> joint_c_;
    std::optional<double> left_c_{};   //!< of the outer end, unless infinite
    std::optional<double> right_c_{};  //!< of the outer end, unless infinite
};

}  // namespace heatmatch
