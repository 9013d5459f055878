#include <cmath>

#include "heatmatch/solar/energy_curve.hpp"

namespace heatmatch {

double CurveTable::beyond(double position) const {
    if (std::isnan(position)) return position;
    const bool below = position <= 0.0;
    const std::size_t end = below ? 0 : count - 1;
    if (value[end] <= 0.0) return 0.0;
    const double s = slope[end] / value[end];
    const double from_end = (position - static_cast<double>(end)) * step;
    if (below) {  // E/R = A + B R
        const double r = std::exp(from_end);
        return value[end] * r * (2.0 - s + (s - 1.0) * r);
    }
    const double r = std::exp(-from_end);  // E R = A + B/R
    return value[end] * r * (1.0 + (1.0 + s) * (1.0 - r));
}

double CurveTable::slope_beyond(double position) const {
    const bool below = position <= 0.0;
    const std::size_t end = below ? 0 : count - 1;
    if (!(value[end] > 0.0)) return 0.0;
    const double s = slope[end] / value[end];
    const double from_end = (position - static_cast<double>(end)) * step;
    if (below) {
        const double r = std::exp(from_end);
        return value[end] * r * (2.0 - s + 2.0 * (s - 1.0) * r);
    }
    const double r = std::exp(-from_end);
    return -value[end] * r * (1.0 + (1.0 + s) * (1.0 - 2.0 * r));
}

double CurveTable::slope_at(double ln_ohm) const {
    const double position = (ln_ohm - ln_first) * per_step;
    const auto last = static_cast<double>(count - 1);
    if (!(position > 0.0 && position < last)) return slope_beyond(position);
    const auto i = static_cast<std::size_t>(position);
    const double t = position - static_cast<double>(i);
    const double rise = value[i + 1] - value[i];
    const double m0 = step * slope[i];
    const double m1 = step * slope[i + 1];
    return (m0 + t * (2.0 * (3.0 * rise - 2.0 * m0 - m1) + t * 3.0 * (m0 + m1 - 2.0 * rise))) /
           step;
}

}  // namespace heatmatch
