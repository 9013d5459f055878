#pragma once

#include <limits>
#include <optional>
#include <span>
#include <vector>

namespace heatmatch {

/// Shorter segments would conduct without a temperature drop and are refused.
inline constexpr double shortest_segment_m = 1e-9;

/// A uniform stretch of rod, tube or wire that conducts along itself and loses heat sideways.
struct FinSegment {
    double length_m = std::numeric_limits<double>::infinity();  //!< infinite is permitted for the
                                                                //!< two end segments only
    double ka_w_m_k = 0.0;   //!< conductivity times cross-section, summed over materials [W m/K]
    double loss_w_mk = 0.0;  //!< heat lost per meter and kelvin; 0 for pure conduction [W/mK]
    double environment_c = 0.0;  //!< surroundings that receive the heat [°C]
    double heat_w_m = 0.0;       //!< heat generated per meter [W/m]
};

/// Fixed temperatures of the outer ends; an end that is neither infinite nor fixed is adiabatic.
struct FinEnds {
    std::optional<double> left_c{};   //!< [°C]
    std::optional<double> right_c{};  //!< [°C]
};

/// Segments end to end, solved exactly: `T'' kA = g (T - T_env) - q'`, each a conductance `G
/// coth(mL)` at its ends and `G/sinh(mL)` between them, `m = sqrt(g/kA)`, `G = sqrt(g kA)`, `T* =
/// T_env + q'/g`; an infinite one `G`. Valid for thin rods: `G` much smaller than `kA/r`. @cite
/// incropera
class FinChain {
  public:
    /// heat_at_joint_w: heat supplied at the joint after each segment but the last [W]; may be
    /// shorter. Throws InvalidInput for a number without meaning, and where nothing determines the
    /// temperature.
    FinChain(std::span<const FinSegment> segments, std::span<const double> heat_at_joint_w = {},
             const FinEnds& ends = {});

    /// Temperatures of the joints between segments, in their order [°C].
    [[nodiscard]] const std::vector<double>& joint_c() const { return joint_c_; }
    /// Temperature in a segment [°C] at a distance from its left end; in an infinite first segment
    /// the distance counts from its right end.
    [[nodiscard]] double temperature_c(std::size_t segment, double distance_m) const;
    /// Heat flow to the right at that place [W].
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
