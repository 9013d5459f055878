#include "theta_table.hpp"

#include <cmath>

namespace heatmatch {

ThetaTable::ThetaTable(const BedFill& fill, double coldest_k, double hottest_k, std::size_t steps)
    : points_(steps + 1) {
    const Conductivity& conductivity = fill.conductivity;
    first_ = conductivity.theta(coldest_k);
    per_ = static_cast<double>(steps) / (conductivity.theta(hottest_k) - first_);
    constexpr int most_turns = 50;
    constexpr double close_enough_k = 1e-9;
    double t_k = coldest_k;  // increasing, because Theta rises with it
    for (std::size_t i = 0; i <= steps; ++i) {
        const double theta = first_ + static_cast<double>(i) / per_;
        for (int turn = 0; turn < most_turns; ++turn) {
            const double by = (theta - conductivity.theta(t_k)) / conductivity.at(t_k);
            t_k += by;
            if (std::fabs(by) < close_enough_k) break;
        }
        points_[i] = {.t_k = t_k, .j_kg = fill.heat_capacity.enthalpy(t_k)};
    }
}

double ThetaTable::theta(double t_k) const {
    const auto after = std::ranges::upper_bound(points_, t_k, {}, &Point::t_k);
    const auto last = static_cast<std::ptrdiff_t>(points_.size()) - 2;
    const std::ptrdiff_t i = std::clamp<std::ptrdiff_t>(after - points_.begin() - 1, 0, last);
    const Point& a = points_[static_cast<std::size_t>(i)];
    const Point& b = points_[static_cast<std::size_t>(i) + 1];
    const double share = (t_k - a.t_k) / (b.t_k - a.t_k);
    return first_ + (static_cast<double>(i) + share) / per_;
}

}  // namespace heatmatch
