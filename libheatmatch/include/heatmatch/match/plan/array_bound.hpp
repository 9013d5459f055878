#pragma once

#include <cstddef>
#include <vector>

#include "heatmatch/match/plan/array_family.hpp"
#include "heatmatch/solar/mixed_array.hpp"
#include "heatmatch/solar/weather_nodes.hpp"

namespace heatmatch {

/// A group of equal panels on its plane.
struct BoundGroup {
    StringPanel panel{};
    std::size_t plane = 0;  //!< in the list of planes
};

/// What an array cannot exceed in each node of the weather.
struct ArrayLimits {
    std::vector<double> power_w{};    //!< sum over its strings [W]
    std::vector<double> current_a{};  //!< sum of the strings' largest short-circuit currents [A]
    std::vector<double> voltage_v{};  //!< largest open-circuit voltage of a string [V]
};

/// Upper bound of the energy of arrays of unlike panels over some weather, far quicker than their
/// curves. In each node the power into R is at most the least of three: what the panels can
/// deliver, `Isc² R`, and `Voc²/R`. At a current of its string, nothing comes from panels whose
/// short-circuit current is lower, because they are bypassed or reversed. Of the others, each
/// delivers at most its largest power up to that current; below its Imp that is at most `I Vmp (2 -
/// I/Imp)`, because the voltage over the current is concave and has the slope -Vmp/Imp at the
/// maximum power point. A panel without bypass diodes carries at most what its tangent at 0 V gives
/// at the reverse of all the other open-circuit voltages of its string.
class ArrayBound {
  public:
    ArrayBound() = default;
    /// `planes` have the same hours, of plane_nodes().
    ArrayBound(std::vector<WeatherNodes> planes, const std::vector<BoundGroup>& groups);

    [[nodiscard]] ArrayLimits limits(const ArrayFamily& family, const FamilyArray& array) const;
    /// At most that much energy reaches a resistance [kWh].
    [[nodiscard]] double at_most_kwh(const ArrayLimits& limits, double resistance_ohm) const;
    /// At most that much energy reaches any resistance [kWh].
    [[nodiscard]] double at_most_kwh(const ArrayLimits& limits) const;
    /// Energy of one panel of a group alone, at its maximum power point all the time [kWh].
    [[nodiscard]] double largest_kwh(std::size_t group) const;

  private:
    /// A panel in a node.
    struct Point {
        double isc_a = 0.0;
        double imp_a = 0.0;
        double vmp_v = 0.0;
        double voc_v = 0.0;
        double per_v = 0.0;  //!< -dI/dV at 0 V; infinite with bypass diodes [S]

        /// Largest power at a current up to that one [W].
        [[nodiscard]] double up_to_w(double current_a) const;
    };
    [[nodiscard]] const Point& point(std::size_t group, std::size_t node) const {
        return points_[group * hours_.size() + node];
    }
    /// Most current of a string in a node [A].
    [[nodiscard]] double string_current_a(const PanelCounts& panels, std::size_t node,
                                          double open_v) const;
    void add_string(const PanelCounts& panels, ArrayLimits& limits) const;

    std::vector<double> hours_{};
    std::vector<Point> points_{};  //!< group by group
};

/// Share by which the interpolated curve of an array may exceed the sum over its nodes; included in
/// the bound.
inline constexpr double curve_allowance = 1e-3;

}  // namespace heatmatch
