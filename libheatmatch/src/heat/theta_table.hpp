#pragma once

#include <algorithm>
#include <cstddef>
#include <vector>

#include "heatmatch/heat/conductivity.hpp"

namespace heatmatch {

/// Temperature and enthalpy of a fill over the Kirchhoff variable, at equal steps, linear between
/// them and beyond: a fast evaluation for time steps, without powers.
class ThetaTable {
  public:
    struct At {
        double t_k = 0.0;
        double t_slope = 0.0;  //!< [K m/W]
        double j_kg = 0.0;
        double j_slope = 0.0;
    };

    ThetaTable(const BedFill& fill, double coldest_k, double hottest_k, std::size_t steps);

    [[nodiscard]] At at(double theta_w_m) const {
        const double place = (theta_w_m - first_) * per_;
        const auto last = static_cast<double>(points_.size() - 2);
        const auto i = place > 0.0 ? static_cast<std::size_t>(std::min(place, last)) : 0;
        const Point& a = points_[i];
        const Point& b = points_[i + 1];
        const double share = place - static_cast<double>(i);
        return {.t_k = a.t_k + share * (b.t_k - a.t_k),
                .t_slope = (b.t_k - a.t_k) * per_,
                .j_kg = a.j_kg + share * (b.j_kg - a.j_kg),
                .j_slope = (b.j_kg - a.j_kg) * per_};
    }

    /// Theta at that temperature of the table [W/m].
    [[nodiscard]] double theta(double t_k) const;

  private:
    struct Point {
        double t_k = 0.0;
        double j_kg = 0.0;
    };
    double first_ = 0.0;
    double per_ = 1.0;
    std::vector<Point> points_{};
};

}  // namespace heatmatch
