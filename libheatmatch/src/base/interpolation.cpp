#include "heatmatch/base/interpolation.hpp"

#include <algorithm>

namespace heatmatch {

double interpolate(const std::vector<TablePoint>& table, double t_c, double otherwise) {
    if (table.empty()) return otherwise;
    if (t_c <= table.front().t_c) return table.front().value;
    if (t_c >= table.back().t_c) return table.back().value;
    const auto above =
        std::upper_bound(table.begin(), table.end(), t_c,
                         [](double t, const TablePoint& point) { return t < point.t_c; });
    const auto below = above - 1;
    const double share = (t_c - below->t_c) / (above->t_c - below->t_c);
    return below->value + share * (above->value - below->value);
}

double largest_between(const std::vector<TablePoint>& table, double t_low_c, double t_high_c,
                       double otherwise) {
    if (table.empty()) return otherwise;
    double largest =
        std::max(interpolate(table, t_low_c, otherwise), interpolate(table, t_high_c, otherwise));
    for (const TablePoint& point : table) {
        if (point.t_c > t_low_c && point.t_c < t_high_c) largest = std::max(largest, point.value);
    }
    return largest;
}

}  // namespace heatmatch
